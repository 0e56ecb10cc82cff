import { Notice } from '@/app/_ui/notice'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { noteRefusal } from '@/lib/request-state'
import type { CodeProblem } from '@/shared/trace/code-alphabet'
import { sayCodeProblem } from '@/shared/wording/say-code'

/**
 * No jar of that code: a slip that shows in it, or a good code that nobody has. Answered with 404, and drawn as a page of its own, so that it
 * can be read without script.
 */
export function NoSuchJar({ problem }: { problem: CodeProblem }) {
  noteRefusal(404)
  return (
    <Page size="phone">
      <PageHead title="No jar found" />
      <Sheet lid="flat" lidWords="Not found">
        <Notice refusal={sayCodeProblem(problem)} />
      </Sheet>
    </Page>
  )
}
