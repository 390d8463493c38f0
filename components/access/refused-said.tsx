import type { Refused } from '#components/access/ask.ts'
import { useAccessWords } from '#components/access/words.tsx'
import { Note } from '#components/ui/note.tsx'

/** Why the house didn't do it, and when it may be asked again. */
export function RefusedSaid({ refused }: { readonly refused: Refused | null }) {
  const words = useAccessWords()
  return (
    <div role="alert">
      {refused && (
        <Note kind="no">
          {words.refused[refused.code]}
          {refused.again !== undefined && ` ${words.againIn(refused.again)}`}
        </Note>
      )}
    </div>
  )
}
