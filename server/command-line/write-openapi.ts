// Writes server/openapi.json anew; a test tells when it is out of date.
import { writeFileSync } from 'node:fs';
import { openApiDocument } from '../openapi/document.ts';

const FILE = new URL('../openapi.json', import.meta.url);
writeFileSync(FILE, `${JSON.stringify(openApiDocument(), null, 2)}\n`);
