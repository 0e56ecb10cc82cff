import { z } from 'zod'
import { line } from './fields'

const LONGEST_ADDRESS = 254 // RFC 5321, 4.5.3.1.3, less the angle brackets

/** An e-mail address as kept: NFKC, lower case, ASCII only, so that two look-alike letters cannot be two people. */
export const EmailAddress = z
  .string('Type your e-mail address.')
  .max(LONGEST_ADDRESS, 'An e-mail address is at most 254 characters.')
  .transform((text) => text.normalize('NFKC').trim().toLowerCase())
  .pipe(
    z
      .email('Type an address like name@example.org.')
      .refine((text) => [...text].every((letter) => letter >= ' ' && letter <= '~'), 'Use plain letters without accents in the address.'),
  )

/** Long enough to resist guessing, no rules beyond length (NIST SP 800-63B-4, 3.1.1.2: 15 characters when it is the only factor; 8 with limits on tries). */
export const Password = z.string('Choose a password.').min(10, 'Use at least 10 characters.').max(200, 'Use at most 200 characters.')

/** What the sign-in form sends. */
export const SignIn = z.strictObject({
  email: EmailAddress,
  password: z.string('Type your password.').min(1, 'Type your password.').max(200, 'A password here has at most 200 characters.'),
})
export type SignIn = z.infer<typeof SignIn>

/** What the sign-up form sends. */
export const SignUp = z.strictObject({
  name: line(80, 'Say what neighbours call you.'),
  email: EmailAddress,
  password: Password,
})
export type SignUp = z.infer<typeof SignUp>

/** What the new-password form sends. */
export const SetPassword = z.strictObject({ password: Password })
export type SetPassword = z.infer<typeof SetPassword>

/** What the mail-me-a-link form sends. */
export const MailLink = z.strictObject({ email: EmailAddress })
export type MailLink = z.infer<typeof MailLink>

/** What the page behind a mailed link sends. */
export const MailedLink = z.strictObject({
  email: EmailAddress,
  token: z.string().regex(/^[\w-]{43}$/, 'Open the link as it stands in the mail.'),
})
export type MailedLink = z.infer<typeof MailedLink>
