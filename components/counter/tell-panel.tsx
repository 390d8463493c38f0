import styles from '#components/counter/ask.module.css'
import shared from '#components/counter/counter.module.css'
import { useCounterWords } from '#components/counter/words.tsx'
import { useActing } from '#components/live/acting.ts'
import { useCrew } from '#components/live/crew.tsx'
import { knownNeeds } from '#lib/rooms/care/facts/known-needs.ts'
import { isTelling, staysApart } from '#lib/rooms/orders/views/changing.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import type { BuildAt, Told } from '#lib/rooms/orders/views/ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild } from '#lib/service/tickets.ts'
import { hasKinds } from '#lib/station/codes/askable.ts'
import type { Need } from '#lib/station/codes/codes.ts'

interface TellPanelProps {
  readonly state: RunningState
  readonly at: BuildAt
  readonly needs: readonly Need[]
  readonly kept: readonly Need[]
  readonly tap: (act: Act) => void
  readonly detail: () => void
}

/** A need told after sending: one tap stops the build on every screen, then it is ordered anew. */
export function TellPanel({ state, at, needs, kept, tap, detail }: TellPanelProps) {
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
    <div className={styles.panel}>
      <div className={styles.words}>
        <div className={styles.handlings}>
          {needs.map(({ code, handling }) => (
            <button
              key={code}
              type="button"
              className={styles.handling}
              data-handling={handling}
              aria-label={words.changeHandling(code, handling)}
              disabled={staysApart(kept, code)}
              onClick={() => tap({ act: 'handling', code })}
            >
              <strong>{words.need(code, handling)}</strong>
              <small>{staysApart(kept, code) ? words.stays : words.tapFor(code, handling)}</small>
            </button>
          ))}
          {needs.length > 0 && (
            <button type="button" className={styles.closer} onClick={detail}>
              {needs.some(({ code }) => hasKinds(state.station, code))
                ? words.detail
                : words.detailReason}
            </button>
          )}
        </div>
        <p role="status" className={acting.said?.kind === 'refused' ? styles.refused : undefined}>
          {link === 'live' || !acting.busy
            ? (acting.said?.text ?? words.needs.tellWhy)
            : words.waitingToTell(name)}
        </p>
      </div>
      <div className={styles.ways}>
        <button
          type="button"
          className={shared.button}
          disabled={acting.busy}
          onClick={() => void tell('not-sure')}
        >
          {words.needs.tellNotSure}
        </button>
        <button
          type="button"
          className={`${shared.main} ${styles.stopIt}`}
          disabled={acting.busy || !isNew}
          onClick={() => void tell('needs')}
        >
          {acting.busy ? words.needs.telling : words.needs.tell(name)}
        </button>
      </div>
    </div>
  )
}
