import shared from '#components/counter/counter.module.css'
import styles from '#components/counter/told-others.module.css'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { useCounterWords } from '#components/counter/words.tsx'
import { useActing } from '#components/live/acting.ts'
import { useCrew } from '#components/live/crew.tsx'
import { useSettled } from '#components/ui/settled.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface ToldOthersStepProps {
  readonly state: RunningState
  readonly desk: OrderingDesk
}

/** A need was told: each other open build of the ticket is answered before anything goes on. */
export function ToldOthersStep({ state, desk: { ordering, tap } }: ToldOthersStepProps) {
  const words = useCounterWords()
  const acting = useActing(words.loadRefusals)
  const link = useCrew((view) => view.link)
  const { others, telling } = ordering
  const [letter] = others?.letters ?? []
  const settled = useSettled(letter ?? '')
  if (!others || !telling || letter === undefined) return null
  const { ticket } = telling
  const { asked, needs } = others.told
  const name = buildName(ticket, letter)
  const build = findBuild(state, ticket, letter)
  const answer = async (isSame: boolean) => {
    if (!settled() || acting.busy) return
    if (!isSame) return tap({ act: 'other-answered', letter })
    const command = { type: 'tellNeed', ticket, letter, asked, needs } as const
    if (await acting.act(command, words.needs.told(name))) tap({ act: 'other-answered', letter })
  }
  const told =
    asked === 'not-sure'
      ? words.needs.unsure
      : needs.map(({ code, handling }) => words.need(code, handling)).join(' · ')
  return (
    <section className={styles.others} aria-labelledby="others">
      <h2 id="others" key={letter} tabIndex={-1} data-step="">
        {words.needs.sameGuest(name)}
      </h2>
      {build && (
        <p className={styles.build}>
          <strong>{nameIn(state.station)(build.choice.item)}</strong>,{' '}
          {words.stateName[build.state]}
        </p>
      )}
      <p className={styles.told}>
        {words.needs.toldJustNow}: <strong>{told}</strong>
      </p>
      <p role="status" className={acting.said?.kind === 'refused' ? styles.refused : undefined}>
        {link === 'live' || !acting.busy
          ? (acting.said?.kind === 'refused' && acting.said.text) || ''
          : words.waitingToTell(name)}
      </p>
      <div className={styles.answers}>
        <button
          type="button"
          className={shared.main}
          disabled={acting.busy}
          onClick={() => void answer(true)}
        >
          {acting.busy ? words.needs.telling : words.needs.sameGuestYes(name)}
        </button>
        <button
          type="button"
          className={shared.button}
          disabled={acting.busy}
          onClick={() => void answer(false)}
        >
          {words.needs.sameGuestNo}
          <small>{words.needs.sameGuestNoWhy}</small>
        </button>
      </div>
    </section>
  )
}
