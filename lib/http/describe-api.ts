import 'server-only'
import { z } from 'zod'
import { API_DOORS, type ApiDoor } from './api-doors'

const Problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string().optional(),
  instead: z.string(),
  fields: z.record(z.string(), z.array(z.string())).optional(),
})

/** The OpenAPI 3.1 document of /api/v1, made from the zod schemas that validate requests. */
export function describeApi() {
  const paths: Record<string, Record<string, unknown>> = {}
  for (const door of API_DOORS) paths[door.path] = { ...paths[door.path], [door.method]: operation(door) }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Lidsong',
      version: '1',
      description: 'Answers are JSON; errors are problem details (RFC 9457). Times of a day are clock text, "18:02".',
    },
    paths,
    components: {
      schemas: { Problem: schemaOf(Problem) },
      securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: 'lidsong.session' } },
    },
  }
}

function operation(door: ApiDoor) {
  const inPath = [...door.path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({ name, in: 'path', required: true, schema: { type: 'string' } }))
  const key = { name: 'Idempotency-Key', in: 'header', required: true, schema: { type: 'string', format: 'uuid' } }
  return {
    operationId: door.operationId,
    summary: door.summary,
    security: door.isPublic ? [] : [{ session: [] }],
    parameters: door.isUnsafe ? [...inPath, key] : inPath,
    ...(door.body ? { requestBody: { required: true, content: { 'application/json': { schema: schemaOf(door.body) } } } } : {}),
    responses: {
      200: {
        description: 'Done',
        content: { [door.isStream ? 'text/event-stream' : 'application/json']: { schema: schemaOf(door.answer) } },
      },
      default: {
        description: 'Refused, with what, why and what to do instead',
        content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
      },
    },
  }
}

/** What may be sent, before it is turned into our own types. */
const schemaOf = (schema: z.ZodType) => {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' })
  return rest
}
