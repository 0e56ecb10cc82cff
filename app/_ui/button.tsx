import type { ReactNode } from 'react'

/** do: the thing to do; plain: another way; grave: last, lowest and large; notyet: says from when it may be done. */
export type ButtonKind = 'do' | 'plain' | 'grave' | 'notyet'

type ButtonProps = {
  kind?: ButtonKind
  /** 48 px, as wide as its words; for rows of a table. */
  small?: boolean
  type?: 'submit' | 'button' | 'reset'
  name?: string
  value?: string
  form?: string
  /** The action of another form address, for two buttons in one form. */
  formAction?: (form: FormData) => void
  formNoValidate?: boolean
  /** Being sent: it stays readable and takes no second tap. */
  busy?: boolean
  /** Drawing in front of the words. */
  mark?: ReactNode
  /** Second line under the words: what it will mean. */
  consequence?: ReactNode
  onClick?: () => void
  describedBy?: string
  children: ReactNode
}

/** The class of a button, shared with links that look like one. */
export const buttonClass = (kind: ButtonKind = 'do', small = false): string =>
  `do${kind === 'do' ? '' : ` ${kind}`}${small ? ' small' : ''}`

/** A full-width button. What may not be done yet is not hidden: it is dashed and says when. */
export function Button({
  kind = 'do',
  small,
  type = 'submit',
  busy,
  mark,
  consequence,
  describedBy,
  children,
  onClick,
  ...rest
}: ButtonProps) {
  const resting = kind === 'notyet' || busy
  return (
    <button
      {...rest}
      className={buttonClass(kind, small)}
      type={kind === 'notyet' ? 'button' : type}
      aria-disabled={resting || undefined}
      aria-busy={busy || undefined}
      aria-describedby={describedBy}
      onClick={resting ? undefined : onClick}
    >
      {mark}
      <span>
        {consequence ? <b>{children}</b> : children}
        {consequence}
      </span>
    </button>
  )
}
