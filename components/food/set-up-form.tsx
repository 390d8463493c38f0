import { useEffect, useState } from 'react'
import { AllDays } from '#components/food/pack-days.tsx'
import styles from '#components/food/set-up.module.css'
import { SetUpLine } from '#components/food/set-up-line.tsx'
import { SetUpPan } from '#components/food/set-up-pan.tsx'
import { useSendLoads } from '#components/food/use-send-loads.ts'
import { useSetUp } from '#components/food/use-set-up.ts'
import { foodName } from '#components/job/food-name.ts'
import { JobForm } from '#components/job/job-form.tsx'
import { ReadingPad } from '#components/job/reading-pad.tsx'
import type { TaskProps } from '#components/job/task-props.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import { Button } from '#components/ui/button.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { useSettled } from '#components/ui/settled.ts'
import { nextAsked } from '#lib/rooms/pans/views/set-up.ts'
import { isAsked, type SetUpRow } from '#lib/rooms/pans/views/set-up-row.ts'
import { componentOf } from '#lib/station/find.ts'

/** The whole line on one sheet: pan after pan what differs and its reading, then all of it at once. */
export function SetUpForm({ state, acting, now, choose, onBack }: TaskProps<'set-up'>) {
  const words = useFoodWords()
  const setUp = useSetUp(state, now)
  const { sheet, form, remember } = setUp
  const loading = useSendLoads(state, acting, setUp)
  const [at, setAt] = useState<string | null>(() => nextAsked(sheet, null))
  const [isDating, setDating] = useState(false)
  const settled = useSettled(at)
  const row = sheet.rows.find(({ pan }) => pan === at) ?? null
  const next = nextAsked(sheet, at)
  const name = (pan: string) => foodName(state, 'pan', pan)
  const time = (moment: number) => words.sayTime(moment, state.station.timeZone)
  const isAll = sheet.rows.every(({ holds }) => holds !== null)
  // What another device loaded meanwhile isn't asked for any more.
  useEffect(() => {
    if (isAll) onBack()
  }, [isAll, onBack])

  const goTo = (pan: string) => {
    if (at !== null && form(at).judged.isReady) remember(at)
    setDating(false)
    setAt(pan)
  }
  const load = async () => {
    if (loading.busy || sheet.loads.length === 0 || !settled()) return
    if (at !== null) remember(at)
    const [refused] = await loading.send()
    if (refused === undefined) onBack()
    else setAt(refused)
  }
  const bad = row?.toTell ?? null
  const tell = async () => {
    if (loading.busy || bad === null || !settled()) return
    remember(bad.pan)
    await loading.send([bad])
  }
  const isCup = ({ component }: Pick<SetUpRow, 'component'>) =>
    componentOf(state.station, component).portion.tool === 'cup'
  const badRead = (pan: string): string | null => {
    const { typed } = form(pan)
    return typed && words.sayDegrees(typed)
  }
  const lackOf = ({ pan, wait, component }: SetUpRow): string | null => {
    if (!wait || !isAsked(wait)) return null
    if (wait.why !== 'reading') return words.setUp.inFull(wait, isCup({ component }), time)
    const { question, lacks } = form(pan).judged
    return question ? words.readings.lackAnswer : lacks && words.readings.lack[lacks]
  }
  const lack = bad === null ? row && lackOf(row) : null
  const count = sheet.loads.length
  const isLast = lack === null && next === null
  const pad = row && row.holds === null && row.needsReading && row.wait?.why !== 'left'
  const sends = words.setUp.send(count)
  const ways = !isLast && (
    <>
      {lack !== null && next !== null && (
        <Button onClick={() => goTo(next)}>{words.setUp.later}</Button>
      )}
      {count > 0 && (
        <Button disabled={loading.busy} onClick={() => void load()}>
          {sends}
        </Button>
      )}
    </>
  )
  return (
    <Notch about={at === null ? [] : [at]} className={styles.sheet ?? ''}>
      <SetUpLine {...{ state, setUp }} lit={at} onChoose={goTo} />
      <div className={styles.below} data-notch-panel="">
        {row && isDating ? (
          <AllDays {...{ state, now, setUp, row }} onBack={() => setDating(false)} />
        ) : (
          <JobForm
            job={{
              lack: lack ?? (isLast && count === 0 && bad === null ? words.setUp.sendNone : null),
              busy: loading.busy,
              send: () => {
                if (bad !== null) void tell()
                else if (isLast) void load()
                else if (next !== null && settled()) goTo(next)
              },
            }}
            kind={bad === null ? 'main' : 'no'}
            send={
              bad !== null
                ? words.forms.readOut(badRead(bad.pan))
                : isLast
                  ? sends
                  : next === null
                    ? ''
                    : words.setUp.next(name(next))
            }
            sub={bad === null && isLast ? words.setUp.rest(sheet.waiting.length) : undefined}
            side={row && pad ? <ReadingPad form={form(row.pan)} /> : undefined}
          >
            {row && (
              <SetUpPan
                {...{ state, choose, now, setUp, row, ways }}
                onDays={() => setDating(true)}
              />
            )}
            {isLast && (
              <ul className={styles.waiting}>
                {sheet.waiting.map((one) => (
                  <li key={one.pan}>
                    {one.wait &&
                      words.setUp.waits(name(one.pan), words.setUp.shortly(one.wait, isCup(one)))}
                  </li>
                ))}
              </ul>
            )}
          </JobForm>
        )}
      </div>
    </Notch>
  )
}
