import type { ServerResponse } from 'node:http';
import { basename } from 'node:path';
import { z } from 'zod';
import { MOST_BYTES } from '../disk/textFile.js';
import { sayJobFinding } from '../job/finding.js';
import { readJob } from '../job/whole/read.js';
import { besideIn } from '../job/beside.js';
import { planOf } from '../plan.js';
import { sheetNames } from '../print/paper/paper.js';
import { beginStream, refuse, sendJson } from '../serve/answer.js';
import { readJson } from '../serve/jsonBody.js';
import { OWNER, type Route } from '../serve/route.js';
import type { PaperNews } from './api.js';
import { isJobName, readJobFile } from './jobFolder.js';
import { makePapers, paperNamesOf } from './makePapers.js';

const written = { name: z.string(), text: z.string().max(MOST_BYTES) };
const paper = z.enum(sheetNames as [string, ...string[]]);
const phase = z.string().max(80).optional();
const namesSchema = z.strictObject({ ...written, paper, phase });
const names = z.array(z.string().max(80)).max(400).optional();
const askedSchema = z.strictObject({ ...written, paper, phase, only: names, with: names, without: names });

/**
 * Papers of what is on the bench, saved or not: which there are, and to make them. News comes as server-sent events
 * (WHATWG HTML, section 9.2), a page at a time.
 */
export function paperRoutes(folder: string): readonly Route[] {
  const planFor = async (name: string, text: string) => {
    const there = isJobName(basename(name)) ? await readJobFile(folder, name) : undefined;
    const beside = there && !('remedy' in there) ? there.beside : {};
    const { job, findings } = readJob(text, name, besideIn(beside));
    return job ? { plan: planOf(job) } : { why: findings.map(sayJobFinding).join('\n') };
  };
  return [
    {
      method: 'POST',
      path: '/api/bench/papers/names',
      allowed: OWNER,
      answer: async ({ request }, response) => {
        const body = await readJson(request, 2 * MOST_BYTES);
        if (!body.ok) return refuse(response, body.refusal.status, body.refusal.why);
        const asked = namesSchema.safeParse(body.value);
        if (!asked.success) return refuse(response, 400, 'A job has a name, a text and a paper.');
        const made = await planFor(asked.data.name, asked.data.text);
        if (!made.plan) return refuse(response, 422, made.why);
        const { paper, phase } = asked.data;
        sendJson(response, 200, { ...paperNamesOf(made.plan, paper, phase), papers: sheetNames });
      },
    },
    {
      method: 'POST',
      path: '/api/bench/papers',
      allowed: OWNER,
      answer: async ({ request }, response) => {
        const body = await readJson(request, 2 * MOST_BYTES);
        if (!body.ok) return refuse(response, body.refusal.status, body.refusal.why);
        const asked = askedSchema.safeParse(body.value);
        if (!asked.success)
          return refuse(response, 400, 'Papers are asked for by the job, its text and the paper’s name.');
        const { name, text, ...choices } = asked.data;
        const made = await planFor(name, text);
        if (!made.plan) return refuse(response, 422, made.why);
        beginStream(response);
        const tell = async (news: PaperNews) => {
          if (!response.write(`data: ${JSON.stringify(news)}\n\n`)) await drained(response);
        };
        try {
          for await (const news of makePapers(made.plan, choices)) {
            if (response.destroyed) return;
            await tell(news);
          }
        } catch (error) {
          await tell({ kind: 'failed', why: `The papers could not be made: ${(error as Error).message}.` });
        }
        response.end();
      },
    },
  ];
}

/** Settles when what was written has gone out. Leaves no listener behind when the other end has gone instead. */
function drained(response: ServerResponse): Promise<void> {
  return new Promise((resolve) => {
    const done = () => {
      response.off('drain', done).off('close', done);
      resolve();
    };
    response.on('drain', done).on('close', done);
  });
}
