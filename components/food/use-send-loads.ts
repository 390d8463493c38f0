import { useState } from 'react'
import type { SetUp } from '#components/food/use-set-up.ts'
import { foodName } from '#components/job/food-name.ts'
import { useFoodWords } from '#components/job/use-food-words.ts'
import type { Acting } from '#components/live/acting.ts'
import { useSend } from '#components/live/crew.tsx'
import type { SetUpLoad } from '#lib/rooms/pans/views/set-up-row.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

export interface SendLoads {
  readonly busy: boolean
  /** All loads of the sheet at once, or these; the pans that weren't taken, none where all were. */
  send(only?: readonly SetUpLoad[]): Promise<readonly string[]>
}

/** Each pan is a load of its own: what isn't taken stays on the sheet, with why. */
export const useSendLoads = (state: RunningState, acting: Acting, setUp: SetUp): SendLoads => {
  const words = useFoodWords()
  const send = useSend()
  const [busy, setBusy] = useState(false)
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  return {
    busy,
    send: async (only) => {
      const loads = only ?? setUp.sheet.loads
      setBusy(true)
      const answers = await Promise.all(loads.map((load) => send(load)))
      const { sayNotTaken, sayRefusal } = await words.loadRefusals()
      setBusy(false)
      const why = answers.map((answer) => {
        if (answer.answer === 'accepted') return null
        return answer.answer === 'refused'
          ? sayRefusal(answer.refusal, nameIn(state.station), time)
          : sayNotTaken(answer.because)
      })
      setUp.sent(Object.fromEntries(loads.map(({ pan }, place) => [pan, why[place] ?? null])))
      const refused = loads.filter((_, place) => why[place] !== null).map(({ pan }) => pan)
      acting.say(
        refused.length === 0
          ? { kind: 'done', text: words.setUp.done(loads.length) }
          : {
              kind: 'refused',
              text: words.setUp.refused(refused.map((pan) => foodName(state, 'pan', pan))),
            },
      )
      return refused
    },
  }
}
