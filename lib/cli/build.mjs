/** Writes the database client and builds the app: what the container image is made with. */
import { buildApp } from './build-app.mjs'
import { generateClient } from './generate-client.mjs'

await generateClient()
await buildApp()
