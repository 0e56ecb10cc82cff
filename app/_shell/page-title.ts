/** The name of a page with the name of the product behind it; `%s` stands for the page's own. */
export const TITLE_TEMPLATE = '%s · Lidsong'

/** What the browser shows as the title of a page. */
export const pageTitle = (name: string): string => TITLE_TEMPLATE.replace('%s', () => name)
