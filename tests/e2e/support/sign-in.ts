import { expect, type Page } from '@playwright/test'
import { PASSWORD } from './start-group'

/** Signs in as a person does: by the form. */
export async function signIn(page: Page, email: string): Promise<void> {
  await page.goto('/sign-in')
  await page.getByRole('textbox', { name: 'E-mail' }).first().fill(email)
  await page.getByRole('textbox', { name: 'Password' }).fill(PASSWORD)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
  await expect(page).not.toHaveURL(/\/sign-in/)
}
