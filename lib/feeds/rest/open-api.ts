import { z } from 'zod';
import { SCOPES } from '../scopes';
import { isFile, type Route } from './route';
import { ROUTES } from './routes';
import { problemShape } from './shapes';

type Json = Record<string, unknown>;

/** The interface described as OpenAPI 3.1, made from the table of routes: what is not in the table is not answered. */
export function openApiDocument(): Json {
  const paths: Record<string, Json> = {};
  for (const route of ROUTES) {
    paths[route.path] = { ...paths[route.path], [route.method.toLowerCase()]: operation(route) };
  }
  return {
    openapi: '3.1.1',
    info: {
      title: 'Wheelchock',
      version: '1',
      description:
        'Fleet, write-ups, what falls due, and flights, for programs of the school. An answer is a decision aid for the ' +
        'moment it was judged; whether an aircraft is in condition for safe flight is decided by its pilot in command ' +
        '(14 CFR 91.7(b)). Hours are whole tenths, instants are UTC, dates are those of the base.',
    },
    servers: [{ url: '/api/v1' }],
    security: [{ key: [] }],
    paths,
    components: {
      securitySchemes: {
        key: {
          type: 'http',
          scheme: 'bearer',
          description:
            `A key of the page of feeds. Scopes: ` +
            Object.entries(SCOPES)
              .map(([name, says]) => `${name} (${says})`)
              .join(', '),
        },
      },
      schemas: { Problem: schemaOf(problemShape, 'output') },
      responses: {
        Problem: {
          description: 'A refusal (RFC 9457)',
          content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
        },
      },
    },
  };
}

function operation(route: Route): Json {
  return {
    operationId: route.name,
    summary: route.summary,
    description: `Scope: ${route.scope}`,
    // OpenAPI 3.1 lets schemes other than OAuth2 name what is needed of them.
    security: [{ key: [route.scope] }],
    parameters: parametersOf(route),
    ...(route.body
      ? {
          requestBody: {
            required: true,
            content: { 'application/json': { schema: schemaOf(route.body, 'input') } },
          },
        }
      : {}),
    responses: {
      ...answersOf(route),
      default: { $ref: '#/components/responses/Problem' },
    },
  };
}

function answersOf(route: Route): Json {
  if (isFile(route)) {
    const content = Object.fromEntries(route.types.map((type) => [type, {}]));
    return { '200': { description: 'The file', content } };
  }
  const content = { 'application/json': { schema: schemaOf(route.output, 'output') } };
  const headers = { ETag: { schema: { type: 'string' } } };
  return {
    [String(route.status)]: { description: 'As asked', headers, content },
    ...(route.status === 200 ? { '304': { description: 'As it was, by its If-None-Match' } } : {}),
  };
}

function parametersOf(route: Route): Json[] {
  const inPath = new Set([...route.path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name));
  const named = Object.entries(route.input.shape).map(([name, schema]) => {
    const { description, ...rest } = schemaOf(schema as z.ZodType, 'input');
    const required = inPath.has(name);
    return {
      name,
      in: required ? 'path' : 'query',
      required,
      ...(description ? { description } : {}),
      schema: rest,
    };
  });
  return route.body ? [...named, IDEMPOTENCY] : named;
}

const IDEMPOTENCY = {
  name: 'Idempotency-Key',
  in: 'header',
  required: true,
  description: 'A UUID of your own, made before the first try and the same in every try: it is written once.',
  schema: { type: 'string', format: 'uuid' },
};

/** A zod schema as JSON Schema of the draft that OpenAPI 3.1 uses. */
function schemaOf(schema: z.ZodType, io: 'input' | 'output'): Json {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, { target: 'draft-2020-12', io });
  return rest as Json;
}
