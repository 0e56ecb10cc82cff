import type { APIRequestContext, APIResponse } from '@playwright/test'
import { SITE } from './caller'

/** What a form of a page would post before any script has arrived: its hidden fields, by name. */
export async function hiddenFieldsOf(context: APIRequestContext, path: string, command: string): Promise<Record<string, string>> {
  return hiddenFields(await formHolding(context, path, `name="_command" value="${command}"`))
}

/** Posts the form of a page's own action that says something, with what is typed into it. */
export async function postActionForm(
  context: APIRequestContext,
  path: string,
  said: string,
  typed: Readonly<Record<string, string>>,
): Promise<APIResponse> {
  const hidden = hiddenFields(await formHolding(context, path, said))
  return context.post(path, { multipart: { ...hidden, ...typed } })
}

async function formHolding(context: APIRequestContext, path: string, text: string): Promise<string> {
  const html = await (await context.get(path)).text()
  const form = html.split('<form').find((part) => part.split('</form>')[0]?.includes(text))
  if (!form) throw new Error(`${path} has no form with ${text}`)
  return form
}

function hiddenFields(form: string): Record<string, string> {
  const inputs = form.split('</form>')[0]?.match(/<input[^>]*type="hidden"[^>]*>/g) ?? []
  return Object.fromEntries(inputs.map((input) => [attribute(input, 'name'), attribute(input, 'value')]))
}

/** Posts it as a browser without script does. An undefined header is left out. */
export function postForm(
  context: APIRequestContext,
  path: string,
  fields: Readonly<Record<string, string>>,
  headers: Readonly<Record<string, string | undefined>> = {},
): Promise<APIResponse> {
  const sent = Object.entries({ origin: SITE, ...headers }).filter((entry): entry is [string, string] => entry[1] !== undefined)
  return context.post(path, { headers: Object.fromEntries(sent), multipart: { ...fields } })
}

function attribute(tag: string, name: string): string {
  const value = new RegExp(`\\s${name.replace('$', '\\$')}="([^"]*)"`).exec(tag)?.[1] ?? ''
  return value.replaceAll('&quot;', '"').replaceAll('&#x27;', "'").replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&')
}
