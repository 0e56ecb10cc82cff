import type { ReactNode } from 'react'
import { Glyph } from '@/app/_ui/glyph'

/** A refusal in three parts: what is not possible, why, and what to do instead. */
export type Refusal = { what: ReactNode; why?: ReactNode; instead?: ReactNode }

type NoticeProps = Partial<Refusal> & {
  /** A refusal that somebody else put together; the parts may also be given one by one. */
  refusal?: Refusal
  /** One sentence, where there is no more to say. */
  text?: ReactNode
  /** Technical number, last and small. */
  logNumber?: string
}

/** Everything that is wrong and belongs to no single entry. It is read out when it appears. */
export function Notice({ refusal, text, logNumber, ...parts }: NoticeProps) {
  const what = parts.what ?? refusal?.what ?? text
  const why = parts.why ?? refusal?.why
  const instead = parts.instead ?? refusal?.instead
  return (
    <div className="notice" role="alert">
      {what && (
        <p className="notice-what">
          <Glyph name="refused" width={40} height={40} />
          <span>{what}</span>
        </p>
      )}
      {why && <p className="why">{why}</p>}
      {instead && (
        <p className="notice-instead">
          <b>Instead:</b> {instead}
        </p>
      )}
      {logNumber && <p className="notice-code src">Number for the log: {logNumber}</p>}
    </div>
  )
}
