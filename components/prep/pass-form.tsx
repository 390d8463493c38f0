import { type ReactNode, useState } from 'react'
import type { Acting } from '#components/live/acting.ts'
import styles from '#components/prep/panel.module.css'
import { usePrepWords } from '#components/prep/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Note } from '#components/ui/note.tsx'
import { type HowFar, PASSED_WHERE, type PassedWhere } from '#lib/service/events/prep-event.ts'

const FAR: readonly { readonly id: '1' | '2' | '3'; readonly far: HowFar }[] = [
  { id: '1', far: 1 },
  { id: '2', far: 2 },
  { id: '3', far: 3 },
]

/** How far a half-done task is, and where it stands, for whoever goes on with it. */
export function PassForm({
  task,
  backBy,
  initials,
  field,
  acting,
  onBack,
  onPassed,
}: {
  readonly task: string
  /** By when it is cold again if it waits there; null: nothing runs there. */
  readonly backBy: (where: PassedWhere) => string | null
  readonly initials: string
  /** Where those are said. */
  readonly field: ReactNode
  readonly acting: Acting
  readonly onBack: () => void
  readonly onPassed: () => void
}) {
  const words = usePrepWords()
  const [far, setFar] = useState<'1' | '2' | '3' | null>(null)
  const [where, setWhere] = useState<PassedWhere | null>(null)
  const said = FAR.find(({ id }) => id === far)?.far
  const lacks =
    (initials.trim() === '' && words.lacksInitials) ||
    (said === undefined && words.lacksFar) ||
    (where === null && words.lacksWhere) ||
    null
  const by = where === null ? null : backBy(where)
  const pass = async () => {
    if (said === undefined || where === null) return
    const command = { type: 'passTask' as const, task, far: said, where, initials }
    if (await acting.act(command, words.passedOn)) onPassed()
  }
  return (
    <div className={styles.pass}>
      <Choice
        legend={words.howFar}
        ways={FAR.map(({ id, far: quarters }) => ({ id, label: words.far[quarters] }))}
        chosen={far}
        onChoose={setFar}
      />
      <Choice
        legend={words.whereIs}
        ways={PASSED_WHERE.map((id) => ({ id, label: words.where[id] }))}
        chosen={where}
        onChoose={setWhere}
      />
      {by !== null && (
        <div className={styles.cold}>
          <Note kind="watch">{words.outIf(by)}</Note>
          <Button onClick={() => setWhere('cooler')}>{words.intoCooler}</Button>
        </div>
      )}
      <div className={styles.acts}>
        <Button kind="quiet" onClick={onBack}>
          {words.back}
        </Button>
        {field}
        <Button
          kind="main"
          size="large"
          lacks={lacks}
          disabled={acting.busy}
          onClick={() => void pass()}
        >
          {words.passIt}
        </Button>
      </div>
    </div>
  )
}
