import { expect, test } from 'vitest';
import { boardOf } from '../../src/board/board.js';
import { PATCHES } from '../../src/board/mesh.js';
import { partsOf } from '../oracle/patches.js';
import { sampleJob, SAMPLES } from '../samples.js';

test.each(SAMPLES)('%s is parted into deck, bottom and rail where its surface has turned by 45°', (name) => {
  const { mesh } = boardOf(sampleJob(name).board);
  const parts = partsOf(mesh);
  PATCHES.forEach((patch, code) => {
    expect(parts[patch].sure.length).toBeGreaterThan(1000);
    expect(parts[patch].sure.filter((t) => mesh.patches[t] !== code)).toEqual([]);
  });
});
