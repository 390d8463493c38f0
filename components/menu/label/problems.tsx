import styles from '#components/menu/label/reading.module.css'
import { useLabelFormWords } from '#components/menu/label/words.tsx'
import type { At, FormProblem } from '#lib/editor/label-form/problems.ts'

interface ProblemsProps {
  readonly problems: readonly FormProblem[]
  readonly at: At
}

/** What is wrong at a part of the form, in words, beside it. */
export function Problems({ problems, at }: ProblemsProps) {
  const words = useLabelFormWords()
  const here = problems.filter((one) => one.at === at)
  return (
    <div role="status" className={styles.wrong}>
      {here.map((one) => (
        <p key={words.sayProblem(one)}>{words.sayProblem(one)}</p>
      ))}
    </div>
  )
}
