/** What is suggested, and what safety asks for: what each opens, and which pan it is about. */
import type { Chosen } from '#components/job/chosen.ts'
import { type About, aboutPlace, pansWith } from '#components/pans/about.ts'
import { type Here, NO_PAN, onPan, soldOutWay, type Told } from '#components/pans/task-ways.ts'
import type { AdviceReason, SafetyReason } from '#lib/estimate/advice-reason.ts'
import type { RunningState } from '#lib/service/state.ts'
import { isReadHere } from '#lib/station/read-here.ts'

const safetyOpens = ({ what, of, id }: SafetyReason): Chosen | null => {
  if (isReadHere(of)) return { task: 'read-here', of }
  if (what === 'throw-out') return { task: 'throw-out', early: null }
  if (of === 'build' || of === 'rest') return null
  switch (what) {
    case 'collect':
      return null
    case 'cooling-due':
      return { task: 'batch', id }
    case 'out-of-limits':
      return { task: 'resolve', what: of, id }
    case 'reading-due':
    case 'reading-missed':
      return { task: 'read', what: of, id }
    case 'throw-out-soon':
      return of === 'pan'
        ? { task: 'pan', pan: id }
        : { task: 'throw-out', early: { what: of, id } }
  }
}

const safetyHang = ({ words, here }: Here, { what, dueAt }: SafetyReason): string => {
  const { hang } = words.onLine
  const at = here.time(dueAt ?? here.now)
  switch (what) {
    case 'reading-due':
    case 'cooling-due':
      return hang.readBy(at)
    case 'reading-missed':
      return words.onLine.read
    case 'throw-out':
      return hang.throwOut
    case 'throw-out-soon':
      return hang.outAt(at)
    default:
      return hang.decide
  }
}

const aboutSafety = (state: RunningState, { of, id }: SafetyReason): About =>
  of === 'pan' || of === 'backup' || of === 'batch' ? aboutPlace(state, of, id) : NO_PAN

export const adviceWay = (
  told: Here,
  reason: AdviceReason,
): Pick<Told, 'hang' | 'opens' | 'about'> => {
  const { words, state } = told
  const { hang } = words.onLine
  if (reason.why === 'safety')
    return {
      hang: safetyHang(told, reason),
      opens: safetyOpens(reason),
      about: aboutSafety(state, reason),
    }
  const pan = pansWith(state, reason.component)[0] ?? null
  const about = pan === null ? NO_PAN : onPan(pan)
  switch (reason.why) {
    case 'sold-out':
      return pan === null
        ? { hang: hang.open, opens: null, about }
        : { ...soldOutWay(told, reason.component, pan), about }
    case 'measure':
      return { hang: hang.look, opens: pan === null ? null : { task: 'pan', pan }, about }
    case 'start-batch':
      return { hang: hang.startLoads(reason.loads), opens: null, about }
    case 'keep':
      return { hang: hang.save(reason.keep), opens: null, about }
  }
}

/** What a button of a suggestion says: the one way that is possible, where it is a pan's own. */
export const adviceButton = (told: Here, reason: AdviceReason): string => {
  if (reason.why !== 'sold-out') return told.words.advice.button(reason)
  const pan = pansWith(told.state, reason.component)[0]
  return pan === undefined ? '' : soldOutWay(told, reason.component, pan).button
}
