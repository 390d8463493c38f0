import styles from '#components/job/panel.module.css'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Acting } from '#components/live/acting.ts'
import { useSettled } from '#components/ui/settled.ts'

interface SellingChoiceProps {
  readonly what: 'component' | 'item'
  readonly id: string
  readonly name: string
  readonly selling: boolean
  /** What it means, a sentence each. */
  readonly because: readonly string[]
  readonly acting: Acting
  readonly onBack: () => void
}

/** Stops or resumes selling, once it was said what that means. */
export function SellingChoice({
  what,
  id,
  name,
  selling,
  because,
  acting,
  onBack,
}: SellingChoiceProps) {
  const words = useFoodWords()
  const settled = useSettled(id)
  const act = async () => {
    if (!settled() || acting.busy) return
    const done = selling ? words.done.stopped(name) : words.done.resumed(name)
    if (await acting.act({ type: selling ? 'stopSelling' : 'resumeSelling', what, id }, done))
      onBack()
  }
  return (
    <>
      <div className={styles.doing}>
        <h3>{selling ? words.stopTitle(name) : words.resumeTitle(name)}</h3>
        <div className={styles.because}>
          {because.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      </div>
      <div className={styles.acts}>
        <button
          type="button"
          className={selling ? styles.stop : styles.main}
          disabled={acting.busy}
          onClick={() => void act()}
        >
          {selling ? words.stopSelling : words.resumeSelling}
        </button>
        <button type="button" className={styles.other} onClick={onBack}>
          {selling ? words.goOnSelling : words.leaveStopped}
        </button>
      </div>
    </>
  )
}
