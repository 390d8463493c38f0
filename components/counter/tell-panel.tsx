import styles from '#components/counter/ask.module.css'
import frame from '#components/counter/step.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { useActing } from '#components/live/acting.ts'
import { useCrew } from '#components/live/crew.tsx'
import { Button } from '#components/ui/button.tsx'
import { knownNeeds } from '#lib/rooms/care/facts/known-needs.ts'
import { isTelling } from '#lib/rooms/orders/views/changing.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import type { BuildAt, Told } from '#lib/rooms/orders/views/ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild } from '#lib/service/tickets.ts'
import type { Need } from '#lib/station/codes/codes.ts'

interface TellPanelProps {
  readonly state: RunningState
  readonly at: BuildAt
  readonly needs: readonly Need[]
  readonly tap: (act: Act) => void
}

/** A need told after sending: one tap stops the build on every screen, then it is ordered anew. */
export function TellPanel({ state, at, needs, tap }: TellPanelProps) {
  const words = useCounterWords()
  const acting = useActing(words.loadRefusals)
  const link = useCrew((view) => view.link)
  const { ticket, letter } = at
  const name = buildName(ticket, letter)
  const build = findBuild(state, ticket, letter)
  const tell = async (asked: Told['asked']) => {
    const told = await acting.act(
      { type: 'tellNeed', ticket, letter, asked, needs },
      words.needs.told(name),
    )
    if (told) tap({ act: 'need-told', ticket, letter, told: { asked, needs } })
  }
  const isNew = build !== undefined && isTelling(knownNeeds(build), needs)
  return (
    <div className={`${frame.side} ${styles.answer}`}>
      <Button
        size="large"
        kind="no"
        className={`${frame.main} ${styles.stopIt}`}
        disabled={acting.busy || !isNew}
        onClick={() => void tell('needs')}
      >
        {acting.busy ? words.needs.telling : words.needs.tell(name)}
      </Button>
      <p
        role="status"
        className={acting.said?.kind === 'refused' ? styles.refused : styles.caution}
      >
        {link === 'live' || !acting.busy
          ? (acting.said?.text ?? words.needs.tellWhy)
          : words.waitingToTell(name)}
      </p>
      <Button className={styles.sure} disabled={acting.busy} onClick={() => void tell('not-sure')}>
        {words.needs.tellNotSure}
      </Button>
    </div>
  )
}
