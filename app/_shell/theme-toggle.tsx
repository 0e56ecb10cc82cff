'use client'

import { useState } from 'react'
import { themeCookie } from '@/app/_shell/theme'

/** Light or dark, for this device. It never changes by itself. */
export function ThemeToggle({ className = 'theme-toggle' }: { className?: string }) {
  const [said, setSaid] = useState('')
  const turn = () => {
    const root = document.documentElement
    const isDark = root.toggleAttribute('data-dark')
    // Not the Cookie Store: it is absent where a kitchen's own network has no HTTPS.
    Object.assign(document, { cookie: themeCookie(isDark ? 'dark' : 'light', window.location.protocol === 'https:') })
    setSaid(isDark ? 'Dark on this device' : 'Light on this device')
  }
  return (
    <>
      <button type="button" className={className} onClick={turn}>
        Light or dark
      </button>
      <span className="unseen" role="status">
        {said}
      </span>
    </>
  )
}
