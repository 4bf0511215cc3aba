import type { Pdf } from './document.js';

/**
 * What a reader program is told that a part of a page is: standard structure types, or what only belongs to the page
 * (ISO 32000-1:2008, 14.8).
 */
export type Tag = 'H1' | 'H2' | 'P' | 'Note' | 'Table' | 'TR' | 'TH' | 'TD' | 'Figure' | 'Artifact';

/** The logical structure of a PDF, which readers that speak or reflow go by (ISO 32000-1:2008, 14.7). */
export interface Tags {
  /** Begins a document of the set: everything after it belongs there. */
  begin(title: string): void;
  /**
   * What `draw` draws is of this kind; within a figure or a line of text nothing else is told apart.
   *
   * @param flush puts what was drawn so far on the page.
   * @param alt says in words what a figure shows.
   */
  tagged(tag: Tag, draw: () => void, flush: () => void, alt?: string): void;
  /** Closes the structure, before the document ends. */
  end(): void;
}

/** These hold other parts; the rest hold what is drawn. */
const HOLDING: readonly Tag[] = ['Table', 'TR'];

export function tagsOn(doc: Pdf): Tags {
  const whole = doc.struct('Document');
  doc.addStructure(whole);
  let open = [whole];
  let drawing = false;
  return {
    begin(title) {
      open.slice(1).forEach((each) => each.end());
      const section = doc.struct('Sect', { title });
      whole.add(section);
      open = [whole, section];
    },
    tagged(tag, draw, flush, alt) {
      if (drawing) return draw();
      flush();
      const mark = (): void => {
        drawing = true;
        draw();
        flush();
        drawing = false;
        doc.endMarkedContent();
      };
      if (tag === 'Artifact') {
        doc.markContent('Artifact', { type: 'Pagination' });
        return mark();
      }
      const element = doc.struct(tag, alt === undefined ? {} : { alt });
      open.at(-1)!.add(element);
      if (HOLDING.includes(tag)) {
        open.push(element);
        draw();
        open.pop();
      } else {
        element.add(doc.markStructureContent(tag));
        mark();
      }
      element.end();
    },
    end() {
      whole.end();
    },
  };
}
