import type { Operation } from './operation.ts';
import { OPERATIONS } from './operations.ts';
import { type SchemaName, schemaComponents } from './schemas.ts';

/** The HTTP interface as an OpenAPI 3.1 document, made from the same schemas that check it. */
export function openApiDocument(): object {
  const paths: Record<string, Record<string, object>> = {};
  for (const operation of OPERATIONS) {
    paths[operation.path] = { ...paths[operation.path], [operation.method]: described(operation) };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Rondure',
      version: '1',
      description: 'Photos of pot plants, their measures and what to do next. Problems are RFC 9457 bodies.',
    },
    servers: [{ url: '/api' }],
    paths,
    components: { schemas: schemaComponents() },
  };
}

function described(operation: Operation): object {
  const parameters = [
    ...[...operation.path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
      name,
      in: 'path',
      required: true,
      schema: { type: 'string' },
    })),
    ...(operation.query ?? []).map(({ name, values }) => ({
      name,
      in: 'query',
      schema: { type: 'string', ...(values ? { enum: values } : {}) },
    })),
  ];
  const body = requestBody(operation);
  return {
    summary: operation.summary,
    ...(parameters.length > 0 ? { parameters } : {}),
    ...(body ? { requestBody: { required: true, content: body } } : {}),
    responses: {
      [operation.status]: { description: operation.summary, ...answerContent(operation) },
      default: {
        description: 'What went wrong and what to do',
        content: { 'application/problem+json': { schema: reference('Problem') } },
      },
    },
  };
}

function requestBody({ sends, sendsPhotos }: Operation): object | null {
  if (sends) return { 'application/json': { schema: reference(sends) } };
  if (!sendsPhotos) return null;
  const { field, many, beside } = sendsPhotos;
  const file = { type: 'string', contentMediaType: 'application/octet-stream' };
  const photos = {
    type: 'object',
    properties: { [field]: many ? { type: 'array', items: file } : file },
    required: [field],
  };
  const schema = beside ? { allOf: [photos, reference(beside)] } : photos;
  return { 'multipart/form-data': { schema } };
}

function answerContent({ status, answers, answersType }: Operation): object {
  if (status === 204) return {};
  const schema = answers ? reference(answers) : answersType ? {} : { type: 'object' };
  return { content: { [answersType ?? 'application/json']: { schema } } };
}

function reference(name: SchemaName): object {
  return { $ref: `#/components/schemas/${name}` };
}
