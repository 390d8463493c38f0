import { type FormEvent, useState } from 'react'
import { sayHandedOver } from '#components/care/handed-over-said.ts'
import { ChoiceRow } from '#components/job/choice-row.tsx'
import type { Chosen } from '#components/job/chosen.ts'
import type { FormProps } from '#components/job/form-props.ts'
import forms from '#components/job/forms.module.css'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import { ReadyNote } from '#components/job/ready-note.tsx'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { useReading } from '#components/job/use-reading.ts'
import { PassphraseField } from '#components/start/passphrase-field.tsx'
import { useSettled } from '#components/ui/settled.ts'
import { handedOverListOf } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { shelfNext } from '#lib/rooms/food/facts/shelf-reading.ts'
import { readingOf, shelfLimit } from '#lib/rooms/food/views/reading-entry.ts'
import { SHELF, shelfHeldBy } from '#lib/service/shelf.ts'

type Props = FormProps<'read-here'>

const WAYS = ['discard', 'time-only'] as const

/** What stood there as it was read out of limits: the person in charge takes one of the ways. */
function DecideShelf({ state, acting, choose, onBack }: Props) {
  const words = useFoodWords()
  const [passphrase, setPassphrase] = useState('')
  const [way, setWay] = useState<(typeof WAYS)[number] | null>(null)
  const ways = WAYS.filter((one) => one === 'discard' || state.station.safety.timeProcedure)
  const lastGoodAt = state.shelf?.offSale?.lastGoodAt ?? null
  const list = handedOverListOf(state, 'shelf', SHELF)
  const toAnswer: Chosen = {
    kind: 'food',
    food: { task: 'handed-over', what: 'shelf', id: SHELF },
  }
  const act = async (event: FormEvent) => {
    event.preventDefault()
    if (way === null || acting.busy) return
    const proof = { passphrase }
    setPassphrase('')
    if (!(await acting.act({ type: 'resolveShelf', way }, words.readHere.shelf.decided, proof)))
      return
    if (list) choose(toAnswer)
    else if (way === 'discard') choose({ kind: 'food', food: { task: 'throw-out', early: null } })
    else onBack()
  }
  return (
    <form className={forms.one} onSubmit={(event) => void act(event)}>
      <p className={forms.warn}>
        {words.readHere.shelf.out}{' '}
        {lastGoodAt === null
          ? words.forms.resolveNoGood
          : words.forms.resolveLastGood(words.sayTime(lastGoodAt, state.station.timeZone))}
      </p>
      {list && (
        <p className={forms.care}>
          {sayHandedOver(words, state, list)} {words.givenOut.who}
        </p>
      )}
      {list && (
        <button type="button" className={forms.small} onClick={() => choose(toAnswer)}>
          {words.givenOut.open}
        </button>
      )}
      <ChoiceRow
        legend={words.forms.resolveWho}
        options={ways.map((id) => ({ id, label: words.readHere.shelf.way[id] }))}
        value={way}
        onChange={setWay}
      />
      <p>{words.readHere.shelf.thenRead}</p>
      <PassphraseField label={words.forms.passphrase} value={passphrase} onChange={setPassphrase} />
      <div className={forms.send}>
        <p className={forms.ready}>
          <small>{words.readings.decides}</small>
        </p>
        <button
          type="submit"
          className={forms.main}
          disabled={acting.busy || way === null || passphrase === ''}
        >
          {words.forms.resolveSend}
        </button>
      </div>
    </form>
  )
}

function ReadShelf({ state, acting, onBack }: Props) {
  const words = useFoodWords()
  const held = shelfHeldBy(state) ?? 'hot'
  const form = useReading(
    state,
    '',
    held === 'hot' ? 'hot-holding' : 'cold-holding',
    shelfLimit(state.station, held),
  )
  const settled = useSettled('shelf')
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const newest = state.shelf?.newest
  const next = shelfNext(state)
  const isOut = form.judged.verdict === 'not-met'
  const act = async () => {
    const reading = readingOf(form.entry)
    if (!reading || !settled() || acting.busy) return
    const initials = form.entry.initials.trim()
    const said = words.readHere.shelf.done(words.sayDegrees(reading))
    if (await acting.act({ type: 'readShelf', reading, initials }, said)) {
      form.remember()
      onBack()
    }
  }
  return (
    <div className={forms.two}>
      <div className={forms.what}>
        <p>
          {words.readHere.shelf.held[held]}{' '}
          {newest
            ? words.forms.newest(words.sayDegrees(newest.temperature), time(newest.at))
            : words.forms.never}{' '}
          {next ? words.forms.nextBy(time(next.dueAt)) : ''}
        </p>
        {!next && <p className={forms.warn}>{words.readHere.shelf.unread}</p>}
        <p className={forms.large}>{words.readHere.shelf.how}</p>
        <div className={forms.send}>
          <ReadyNote form={form} />
          <button
            type="button"
            className={isOut ? forms.stop : forms.main}
            disabled={acting.busy || !form.judged.isReady}
            onClick={() => void act()}
          >
            {(isOut ? words.readHere.shelf.readOut : words.forms.readSend)(
              form.typed && words.sayDegrees(form.typed),
            )}
          </button>
        </div>
      </div>
      <ReadingPad form={form} />
    </div>
  )
}

/** The hot or cold shelf of made food: read, or decided on where it was out of its limits. */
export function ShelfForm(props: Props) {
  return props.state.shelf?.offSale ? <DecideShelf {...props} /> : <ReadShelf {...props} />
}
