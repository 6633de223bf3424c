import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { askScikitImage, PYTHON } from './ask-scikit-image.ts';

/** `node --import tsx tests/reference/skeletons/write-expected.ts` writes what scikit-image says of the masks, for machines without it. */
if (PYTHON === undefined) throw new Error('No Python with scikit-image was found. Install python3-skimage.');
writeFileSync(join(import.meta.dirname, 'expected.json'), `${JSON.stringify(askScikitImage(PYTHON))}\n`);
