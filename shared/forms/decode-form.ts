/** A form's own fields, without the ones that begin with an underscore or a dollar sign. */
export interface DecodedForm {
  readonly input: Record<string, unknown>
  readonly typed: Record<string, string | string[]>
}

/**
 * Turns posted fields into an input object: a name ending in `[]` is a list, an empty text is left out.
 *
 * Files are left out: no form of ours sends one through here. So is NUL in a text, which the store cannot hold and nobody types.
 */
export function decodeForm(form: FormData): DecodedForm {
  const input: Record<string, unknown> = {}
  const typed: Record<string, string | string[]> = {}
  for (const name of new Set(form.keys())) {
    if (name.startsWith('_') || name.startsWith('$')) continue
    const values = textsOf(form, name)
    const isList = name.endsWith('[]')
    const key = isList ? name.slice(0, -2) : name
    typed[key] = isList ? values : (values.at(-1) ?? '')
    if (isList) input[key] = values.filter((value) => value !== '')
    else if (values.at(-1)) input[key] = values.at(-1)
  }
  return { input, typed }
}

function textsOf(form: FormData, name: string): string[] {
  const values = form.getAll(name).filter((value): value is string => typeof value === 'string')
  return values.map((value) => value.replaceAll('\0', ''))
}
