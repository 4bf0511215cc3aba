#!/usr/bin/env node
import { processIo } from './processIo.js';
import { run } from './run.js';

process.exitCode = await run(process.argv.slice(2), processIo());
