import forms from '#components/pans/forms.module.css'
import type { ReadingForm } from '#components/pans/use-reading.ts'
import { readingWords as words } from '#lib/words/reading-pad-en.ts'

/** What a reading still lacks, beside the button that waits for it; and who decides on limits. */
export function ReadyNote({ form }: { readonly form: ReadingForm | null }) {
  if (!form) return null
  const { lacks, question } = form.judged
  return (
    <p className={forms.ready} role="status">
      {lacks && !question ? <b>{words.lack[lacks]} </b> : null}
      <small>{words.decides}</small>
    </p>
  )
}
