/** The cookie that holds this device's choice of light or dark. It says nothing about anybody. */
export const THEME_COOKIE = 'lidsong-theme'

/** The cookie that makes every later page of this device light or dark, for a year. */
export const themeCookie = (theme: 'light' | 'dark', secure: boolean): string =>
  `${THEME_COOKIE}=${theme}; Path=/; Max-Age=31536000; SameSite=Lax${secure ? '; Secure' : ''}`
