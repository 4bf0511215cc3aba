import type { ViewOf } from './viewOf.js';
import { useState } from 'preact/hooks';
import { MOST_NAME } from '../log/event.js';
import { STEPS } from '../log/step.js';
import { fetchFile } from './link/serverCalls.js';
import { LetPhonesIn } from './letPhonesIn.js';
import { CAUTIONS, CAUTIONS_DEFER, PLAIN_HTTP_WORDS, STEP_DONE } from './words.js';

/** Who works here, the list as a file, phones, what was not accepted, the cautions. */
export function More(of: ViewOf) {
  const { shop, shown, whole } = of;
  const [failed, setFailed] = useState(false);
  const download = async () => {
    const url = await fetchFile('/api/list.csv', shop.key);
    setFailed(url === undefined);
    if (url === undefined) return;
    const link = document.createElement('a');
    link.href = url;
    link.download = 'tracking-list.csv';
    link.click();
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
  };
  return (
    <>
      <h2>Who</h2>
      <label>
        Your name on this phone
        <input
          value={shown.who}
          maxLength={MOST_NAME}
          autocomplete="given-name"
          onChange={(event) => void shop.setWho(event.currentTarget.value.trim())}
        />
      </label>
      <h2>The list as a file</h2>
      <button type="button" class="wide" onClick={() => void download()}>
        Save the list (CSV)
      </button>
      {failed && (
        <p role="alert" class="trouble">
          The tracker does not answer. Try again when connected.
        </p>
      )}
      {whole.role === 'owner' && <LetPhonesIn {...of} />}
      {!isSecureContext && (
        <>
          <h2>Without a connection</h2>
          <p>{PLAIN_HTTP_WORDS}</p>
        </>
      )}
      {shown.refused.length > 0 && (
        <>
          <h2>Not accepted</h2>
          <ul class="plain">
            {shown.refused.map(({ event, why }) => (
              <li key={event.seq}>
                {JSON.stringify(event.what)} <small>{why}</small>
              </li>
            ))}
          </ul>
        </>
      )}
      <h2>Take care</h2>
      <dl>
        {STEPS.map((step) => (
          <div key={step}>
            <dt>{STEP_DONE[step]}</dt>
            <dd>{CAUTIONS[step]}</dd>
          </div>
        ))}
      </dl>
      <p>{CAUTIONS_DEFER}</p>
    </>
  );
}
