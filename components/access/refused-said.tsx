import type { Refused } from '#components/access/ask.ts'
import { useAccessWords } from '#components/access/words.tsx'
import { Note } from '#components/ui/note.tsx'

/** Why the house didn't do it, and when it may be asked again. */
export function RefusedSaid({
  refused,
  notIt,
}: {
  readonly refused: Refused | null
  /** Instead of what is said of a code that isn't it. */
  readonly notIt?: string
}) {
  const words = useAccessWords()
  return (
    <div role="alert">
      {refused && (
        <Note kind="no">
          {refused.code === 'not-it' && notIt !== undefined ? notIt : words.refused[refused.code]}
          {refused.again !== undefined && ` ${words.againIn(refused.again)}`}
        </Note>
      )}
    </div>
  )
}
