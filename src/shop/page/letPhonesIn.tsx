import type { ViewOf } from './viewOf.js';
import { useEffect, useState } from 'preact/hooks';
import { call } from './link/serverCalls.js';
import { NOT_SHARED_WORDS, SHARED_WORDS } from './words.js';

interface Code {
  readonly address: string;
  readonly code: string;
  /** How long it lets somebody in. */
  readonly minutes: number;
  readonly svg: string;
}

/** On the machine that holds the job: the code that lets in the next phone. */
export function LetPhonesIn({ shop, whole }: ViewOf) {
  const [code, setCode] = useState<Code>();
  const [asked, setAsked] = useState(false);
  useEffect(() => {
    if (!asked) return;
    const read = async () => {
      const got = await call<Code>('/api/code', shop.key);
      if (got.kind === 'answer') setCode(got.value);
    };
    void read();
    const timer = setInterval(() => void read(), 2000);
    return () => clearInterval(timer);
  }, [asked]);
  if (!whole.shared) return <PhonesSection>{NOT_SHARED_WORDS}</PhonesSection>;
  return (
    <PhonesSection>
      {SHARED_WORDS}
      {!asked && (
        <button type="button" class="wide" onClick={() => setAsked(true)}>
          Show the code for the next phone
        </button>
      )}
      {code && (
        <figure>
          <img
            class="code"
            src={`data:image/svg+xml,${encodeURIComponent(code.svg)}`}
            alt="Code to scan with the phone"
          />
          <figcaption>
            Or open <b>{code.address}</b> on the phone and type <b>{code.code}</b>. It lets in one phone, within{' '}
            {code.minutes} minutes; then another code stands here.
          </figcaption>
        </figure>
      )}
    </PhonesSection>
  );
}

function PhonesSection({ children }: { readonly children: preact.ComponentChildren }) {
  return (
    <section aria-labelledby="phones">
      <h2 id="phones">Phones</h2>
      {children}
    </section>
  );
}
