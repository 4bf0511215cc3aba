// Writes the schema of job files for editors. Run by `npm run schema`, which compiles first.
import { writeFileSync } from 'node:fs';
import { jobJsonSchema } from '../dist/src/job/whole/file.js';

const target = new URL('../templates/job.schema.json', import.meta.url);
writeFileSync(target, `${JSON.stringify(jobJsonSchema(), null, 2)}\n`);
console.log('templates/job.schema.json');
