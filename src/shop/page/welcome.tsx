import { useState } from 'preact/hooks';
import type { Shown, ShopOnPage } from './link/shopOnPage.js';
import { WELCOME_WORDS } from './words.js';

/** What a phone sees that was not let in, or not any more. What it could not send stays on it. */
export function Welcome({ shop, shown }: { readonly shop: ShopOnPage; readonly shown: Shown }) {
  const [code, setCode] = useState('');
  const [refused, setRefused] = useState<string>();
  return (
    <main class="welcome">
      <h1>Fill blocks</h1>
      <p>{WELCOME_WORDS}</p>
      {shown.unsent.length > 0 && (
        <p class="caution">{shown.unsent.length} unsent, kept on this phone. They are sent once it is let in again.</p>
      )}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void shop.letIn(code).then(setRefused);
        }}
      >
        <label>
          Code
          <input
            value={code}
            onInput={(event) => setCode(event.currentTarget.value)}
            autocomplete="one-time-code"
            autocapitalize="characters"
            spellcheck={false}
            required
          />
        </label>
        <button type="submit" class="wide">
          Open the list
        </button>
      </form>
      {refused !== undefined && (
        <p role="alert" class="trouble">
          {refused}
        </p>
      )}
    </main>
  );
}
