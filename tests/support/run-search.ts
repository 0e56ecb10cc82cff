import 'server-only'
import { searchPlan } from '@/lib/jobs/search-plan'

// Runs one search in a process of its own: node … tests/support/run-search.ts GROUP SEARCH
const [groupId = '', searchId = ''] = process.argv.slice(2)
await searchPlan({ groupId, searchId }, { milliseconds: 120_000 })
