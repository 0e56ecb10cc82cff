import Link from 'next/link'
import type { ReactNode } from 'react'
import { type ButtonKind, buttonClass } from '@/app/_ui/button'

/** A link that looks like a button: it goes somewhere and changes nothing. */
export function LinkButton({ href, kind, small, mark, children }: LinkButtonProps) {
  return (
    <Link className={buttonClass(kind, small)} href={href} prefetch={false}>
      {mark}
      <span>{children}</span>
    </Link>
  )
}

type LinkButtonProps = { href: string; kind?: Exclude<ButtonKind, 'notyet'>; small?: boolean; mark?: ReactNode; children: ReactNode }
