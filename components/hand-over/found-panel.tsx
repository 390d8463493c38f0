import styles from '#components/hand-over/lists.module.css'
import { useHandOverWords } from '#components/hand-over/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Note } from '#components/ui/note.tsx'
import { Panel } from '#components/ui/panel.tsx'
import type { Kept } from '#lib/rooms/shelf/views/hand-over.ts'

/** The guest of a handed-over build is found: whether the food came back. */
export function FoundPanel({
  kept,
  busy,
  onFound,
  onBack,
}: {
  readonly kept: Kept
  readonly busy: boolean
  readonly onFound: (foodIsBack: boolean) => void
  readonly onBack: () => void
}) {
  const words = useHandOverWords()
  return (
    <Panel
      title={words.findQuestion(kept.name)}
      label={words.findQuestion(kept.name)}
      back={words.notYet}
      onBack={onBack}
    >
      <p className={styles.why}>{words.sayWhyHeld(kept.why)}</p>
      <Note kind="no">{words.findInCharge}</Note>
      <div className={styles.choices}>
        <Button
          size="large"
          disabled={busy}
          sub={words.foundBackThen}
          onClick={() => onFound(true)}
        >
          {words.foundBack}
        </Button>
        <Button
          size="large"
          disabled={busy}
          sub={words.foundToldThen}
          onClick={() => onFound(false)}
        >
          {words.foundTold}
        </Button>
      </div>
    </Panel>
  )
}
