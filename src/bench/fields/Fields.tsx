import { useMemo, useState } from 'preact/hooks';
import schemaFile from '../../../templates/job.schema.json' with { type: 'json' };
import type { Bench, BenchState } from '../state/bench.js';
import { documentOf, isBroken } from '../../job/edit/document.js';
import { withItemCopied, withoutItem } from '../../job/edit/item.js';
import { spoken } from '../state/words.js';
import { FieldInput } from './FieldInput.js';
import { fieldGroups, type Schema } from './fields.js';
import { Slider, SLIDERS } from './Slider.js';

// What TypeScript makes of the file has every key in every form, where it is undefined.
const schema = schemaFile as unknown as Schema;

/** Every number of the job: the six that are turned most as sliders, all others by section. */
export function Fields({ bench, state }: { readonly bench: Bench; readonly state: BenchState }) {
  const file = useMemo(() => dataOf(state.history.text), [state.history.text]);
  const [open, setOpen] = useState<readonly string[]>([]);
  const { shown, findings, units } = state;
  const fileUnits = file['units'] === 'in' ? 'in' : 'mm';
  const common = { bench, findings, file: fileUnits, units } as const;
  const groups = (section: string) =>
    fieldGroups(section, file[section], schema.properties?.[section] ?? {}, shown?.job, units);
  const chamberFields = groups('chambers')[0]!.fields;
  const sections = ['chambers', ...Object.keys(file).filter((key) => key !== 'chambers')];

  return (
    <section class="fields" aria-labelledby="fields-title">
      <h2 id="fields-title">Change</h2>
      {shown &&
        SLIDERS.map((slider) => {
          const field = chamberFields.find(({ path }) => path.length === 2 && path[1] === slider.key);
          return (
            field && <Slider key={slider.key} {...common} slider={slider} field={field} chambers={shown.job.chambers} />
          );
        })}
      {sections.map((section) => (
        <details
          key={section}
          data-section={section}
          onToggle={({ currentTarget }) =>
            setOpen((was) =>
              currentTarget.open ? [...new Set([...was, section])] : was.filter((each) => each !== section),
            )
          }
        >
          <summary>
            {section === 'chambers' ? 'chambers, the rest' : spoken(section)}
            {findings.some(({ where }) => where.path.startsWith(section)) && <span class="mark"> – has a mistake</span>}
          </summary>
          {open.includes(section) &&
            groups(section).map(({ title, fields, item, list }) => (
              <fieldset key={title}>
                <legend>{title}</legend>
                {fields
                  .filter(
                    ({ path }) =>
                      section !== 'chambers' || !SLIDERS.some(({ key }) => path.length === 2 && key === path[1]),
                  )
                  .map((field) => (
                    <FieldInput key={field.path.join('.')} {...common} field={field} />
                  ))}
                {item && (
                  <button
                    type="button"
                    aria-label={`Remove ${title}`}
                    onClick={() => bench.change((text) => withoutItem(text, item))}
                  >
                    Remove
                  </button>
                )}
                {list && (
                  <button
                    type="button"
                    data-add={list.join('.')}
                    onClick={() => bench.change((text) => withItemCopied(text, list))}
                  >
                    Add another
                  </button>
                )}
              </fieldset>
            ))}
        </details>
      ))}
    </section>
  );
}

function dataOf(text: string): Record<string, unknown> {
  const data: unknown = isBroken(text) ? undefined : documentOf(text).toJS();
  return typeof data === 'object' && data !== null ? (data as Record<string, unknown>) : {};
}
