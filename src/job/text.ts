import { z } from 'zod';

/** A short text for people: a name, a source. One line, 1 to 80 characters. */
export function shortText(description: string): z.ZodString {
  return z
    .string()
    .min(1, 'an empty text is written|write a few words')
    .max(80, 'a text of more than 80 characters is written|shorten it to 80, so that it fits a title block')
    .regex(/^[^\n\r\t]*$/, 'a text of more than one line is written|write it on one line')
    .meta({ description });
}
