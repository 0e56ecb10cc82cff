import type { ChangeEventHandler, FocusEventHandler, ReactNode, Ref } from 'react'
import { Glyph } from '@/app/_ui/glyph'

/** What is wrong with one entry: nothing, one sentence, or several of which the first is said. */
export type FieldErrors = string | readonly string[] | undefined

/** Hands an entry to a form that watches it: where it is, and when it was touched or changed. */
export type Wiring<Entry extends Element = HTMLInputElement & HTMLSelectElement & HTMLTextAreaElement> = {
  ref: Ref<Entry>
  onBlur: FocusEventHandler
  onChange: ChangeEventHandler
}

/** What every entry of a form has in common. */
export type FieldBasics = {
  name: string
  label: ReactNode
  hint?: ReactNode
  /** What was typed last time; it comes back so that nobody types it twice. */
  typed?: string | number | null
  errors?: FieldErrors
  required?: boolean
  /** Needed when the same name stands twice on a page. */
  id?: string
  wired?: Wiring
}

/** The ids that tie an entry to its hint and its error. */
export function fieldWiring(id: string, hint: ReactNode, errors: FieldErrors) {
  const message = firstError(errors)
  const describedBy = [hint ? `${id}-hint` : '', message ? `${id}-error` : ''].filter(Boolean).join(' ')
  return { message, aria: { 'aria-describedby': describedBy || undefined, 'aria-invalid': message ? true : undefined } as const }
}

export const firstError = (errors: FieldErrors): string | undefined => (typeof errors === 'string' ? errors : errors?.[0]) || undefined

type FrameProps = Pick<FieldBasics, 'label' | 'hint' | 'required'> & { id: string; message: string | undefined; children: ReactNode }

/** Label, hint and error over one entry, in the order in which they are read out. */
export function FieldFrame({ id, label, hint, required, message, children }: FrameProps) {
  return (
    <div className="field">
      <label htmlFor={id}>
        {label}
        <OptionalMark required={required} />
      </label>
      <FieldHint id={id} hint={hint} />
      <FieldError id={id} message={message} />
      {children}
    </div>
  )
}

/** Hint under a label. */
export function FieldHint({ id, hint }: { id: string; hint?: ReactNode }) {
  return hint ? (
    <span className="field-hint" id={`${id}-hint`}>
      {hint}
    </span>
  ) : null
}

/** The error of one entry, under it. */
export function FieldError({ id, message }: { id: string; message?: string }) {
  return message ? (
    <span className="field-error" id={`${id}-error`}>
      <Glyph name="refused" width={24} height={24} />
      <span>{message}</span>
    </span>
  ) : null
}

/** "(if you like)" behind the label of an entry that may stay empty. */
export function OptionalMark({ required }: { required?: boolean }) {
  return required === false ? <span className="field-optional"> (if you like)</span> : null
}
