import { z } from 'zod';
import { MOST_BYTES } from '../disk/textFile.js';
import { sayFinding } from '../finding/say.js';
import { refuse, sendJson } from '../serve/answer.js';
import { readJson } from '../serve/jsonBody.js';
import { OWNER, type Route } from '../serve/route.js';
import { isJobName, jobsIn, readJobFile, writeJobFile } from './jobFolder.js';

const savedSchema = z.strictObject({
  name: z.string(),
  text: z.string().max(MOST_BYTES),
  basedOn: z.string().optional(),
});

const NOT_A_JOB =
  'That is not the name of a job file in the opened folder: a name ending in .yaml, .yml or .json, without a path.';

/**
 * What the page may ask about jobs: which there are, one of them, and to write one. Only the owner, only in the opened
 * folder.
 *
 * @param folder the folder of the opened job
 * @param opened the job's file name in it
 */
export function jobRoutes(folder: string, opened: string): readonly Route[] {
  return [
    {
      method: 'GET',
      path: '/api/bench',
      allowed: OWNER,
      answer: async (_, response) => sendJson(response, 200, { opened, jobs: await jobsIn(folder) }),
    },
    {
      method: 'GET',
      path: '/api/bench/job',
      allowed: OWNER,
      answer: async ({ query }, response) => {
        const name = query.get('name') ?? '';
        if (!isJobName(name)) return refuse(response, 400, NOT_A_JOB);
        const job = await readJobFile(folder, name);
        if (!job) return refuse(response, 404, `There is no job file "${name}" in the opened folder.`);
        if ('remedy' in job) return refuse(response, 403, sayFinding(job));
        sendJson(response, 200, job);
      },
    },
    {
      method: 'PUT',
      path: '/api/bench/job',
      allowed: OWNER,
      answer: async ({ request }, response) => {
        const body = await readJson(request, 2 * MOST_BYTES);
        if (!body.ok) return refuse(response, body.refusal.status, body.refusal.why);
        const asked = savedSchema.safeParse(body.value);
        if (!asked.success) return refuse(response, 400, 'A save has a name, a text and the version it is based on.');
        const { name, text, basedOn } = asked.data;
        if (!isJobName(name)) return refuse(response, 400, NOT_A_JOB);
        try {
          const saved = await writeJobFile(folder, name, text, basedOn);
          sendJson(response, saved.saved ? 200 : 409, saved);
        } catch (error) {
          refuse(
            response,
            500,
            `The job could not be written: ${(error as Error).message}. What is on the page stays there.`,
          );
        }
      },
    },
  ];
}
