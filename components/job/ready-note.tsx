import forms from '#components/job/forms.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { ReadingForm } from '#components/job/use-reading.ts'

/** What a reading still lacks, beside the button that waits for it; and who decides on limits. */
export function ReadyNote({ form }: { readonly form: ReadingForm | null }) {
  const words = useFoodWords()
  if (!form) return null
  const { lacks, question } = form.judged
  return (
    <p className={forms.ready} role="status">
      {lacks && !question ? <b>{words.readings.lack[lacks]} </b> : null}
      <small>{words.readings.decides}</small>
    </p>
  )
}
