import type { SchemaName } from './schemas.ts';

/** One address and method of the interface. Bodies are JSON unless told otherwise. */
export interface Operation {
  readonly method: 'get' | 'post' | 'put' | 'patch' | 'delete';
  readonly path: string;
  readonly summary: string;
  readonly sends?: SchemaName;
  /** Multipart field of the photos that are sent, and the schema of the text fields beside them. */
  readonly sendsPhotos?: { readonly field: string; readonly many: boolean; readonly beside?: SchemaName };
  readonly query?: readonly { readonly name: string; readonly values?: readonly string[] }[];
  readonly status: 200 | 201 | 202 | 204;
  readonly answers?: SchemaName;
  /** Content type of an answer that is not JSON. */
  readonly answersType?: string;
}
