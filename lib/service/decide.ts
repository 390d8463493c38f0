import { z } from 'zod'
import { bare } from '#lib/service/bare.ts'
import { answerAdviceSchema, decideAnswerAdvice } from '#lib/service/commands/advice.ts'
import { cancelSchema, decideCancel } from '#lib/service/commands/cancel.ts'
import { changeSchema, decideChange } from '#lib/service/commands/change.ts'
import {
  closeSchema,
  confirmClockSchema,
  decideClose,
  decideConfirmClock,
} from '#lib/service/commands/close.ts'
import { correctSchema, decideCorrect } from '#lib/service/commands/correct.ts'
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import { decideFood, FOOD_SCHEMAS } from '#lib/service/commands/food.ts'
import {
  acceptCautionSchema,
  decideAcceptCaution,
  decideSignOff,
  decideSignOn,
  signOffSchema,
  signOnSchema,
} from '#lib/service/commands/in-charge.ts'
import { decideEndKeep, decideKeep, endKeepSchema, keepSchema } from '#lib/service/commands/keep.ts'
import {
  changeLabelSchema,
  decideChangeLabel,
  decideNotSameProduct,
  notSameProductSchema,
} from '#lib/service/commands/label.ts'
import {
  decideFinish,
  decideHandOver,
  decideRemake,
  decideStart,
  decideTakeBack,
  finishSchema,
  handOverSchema,
  remakeSchema,
  startSchema,
  takeBackSchema,
} from '#lib/service/commands/make.ts'
import { decideOpen, openSchema } from '#lib/service/commands/open.ts'
import { decideSoilPan, soilPanSchema } from '#lib/service/commands/pans.ts'
import { decidePay, paySchema } from '#lib/service/commands/pay.ts'
import { decideRemakeMixedUp, remakeMixedUpSchema } from '#lib/service/commands/remake-mixed-up.ts'
import {
  decideMissScoop,
  decideScoopBack,
  missScoopSchema,
  scoopBackSchema,
} from '#lib/service/commands/scoop.ts'
import {
  decideSelling,
  resumeSellingSchema,
  stopSellingSchema,
} from '#lib/service/commands/selling.ts'
import { decideSend, sendSchema } from '#lib/service/commands/send.ts'
import { decideSetBackup, setBackupSchema } from '#lib/service/commands/set-backup.ts'
import { decideSetDay, setDaySchema } from '#lib/service/commands/set-day.ts'
import { acknowledgeSchema, decideAcknowledge } from '#lib/service/commands/stop-build.ts'
import { decideTellNeed, tellNeedSchema } from '#lib/service/commands/tell-need.ts'
import { decideWait, waitSchema } from '#lib/service/commands/wait.ts'
import { decideWantedGone, wantedGoneSchema } from '#lib/service/commands/wanted-gone.ts'
import { decideWaste, wasteSchema } from '#lib/service/commands/waste.ts'
import type { ServiceEvent } from '#lib/service/event.ts'
import { happen } from '#lib/service/happen.ts'
import type { ServiceState } from '#lib/service/state.ts'

/** Every command, as it may come from outside. */
export const commandSchema = z.discriminatedUnion('type', [
  openSchema,
  ...FOOD_SCHEMAS,
  correctSchema,
  sendSchema,
  changeSchema,
  cancelSchema,
  acknowledgeSchema,
  startSchema,
  finishSchema,
  takeBackSchema,
  remakeSchema,
  remakeMixedUpSchema,
  handOverSchema,
  paySchema,
  stopSellingSchema,
  resumeSellingSchema,
  signOnSchema,
  signOffSchema,
  acceptCautionSchema,
  tellNeedSchema,
  changeLabelSchema,
  notSameProductSchema,
  soilPanSchema,
  setBackupSchema,
  setDaySchema,
  wasteSchema,
  keepSchema,
  endKeepSchema,
  wantedGoneSchema,
  missScoopSchema,
  scoopBackSchema,
  answerAdviceSchema,
  waitSchema,
  confirmClockSchema,
  closeSchema,
])

export type Command = z.infer<typeof commandSchema>

/** What a command does by itself: what follows from that isn't said by it. */
export const decideAlone = (
  state: ServiceState,
  command: Command,
  circumstances: Circumstances,
): Decision => {
  switch (command.type) {
    case 'open':
      return decideOpen(state, command, circumstances)
    case 'startBatch':
    case 'recordCooking':
    case 'finishBatch':
    case 'recordCooling':
    case 'recordReheating':
    case 'startTimeClock':
    case 'load':
    case 'changePan':
    case 'topUp':
    case 'readTemperature':
    case 'resolveOffSale':
    case 'readShelf':
    case 'resolveShelf':
    case 'throwOut':
    case 'answerHandedOver':
      return decideFood(state, command, circumstances)
    case 'correct':
      return decideCorrect(state, command, circumstances)
    case 'send':
      return decideSend(state, command, circumstances)
    case 'change':
      return decideChange(state, command, circumstances)
    case 'cancel':
      return decideCancel(state, command)
    case 'acknowledge':
      return decideAcknowledge(state, command)
    case 'start':
      return decideStart(state, command, circumstances)
    case 'finish':
      return decideFinish(state, command, circumstances)
    case 'takeBack':
      return decideTakeBack(state, command, circumstances)
    case 'remake':
      return decideRemake(state, command, circumstances)
    case 'remakeMixedUp':
      return decideRemakeMixedUp(state, command, circumstances)
    case 'handOver':
      return decideHandOver(state, command, circumstances)
    case 'pay':
      return decidePay(state, command)
    case 'stopSelling':
    case 'resumeSelling':
      return decideSelling(state, command)
    case 'signOn':
      return decideSignOn(state, circumstances)
    case 'signOff':
      return decideSignOff(state)
    case 'acceptCaution':
      return decideAcceptCaution(state, command, circumstances)
    case 'tellNeed':
      return decideTellNeed(state, command)
    case 'changeLabel':
      return decideChangeLabel(state, command, circumstances)
    case 'notSameProduct':
      return decideNotSameProduct(state, command, circumstances)
    case 'soilPan':
      return decideSoilPan(state, command)
    case 'setBackup':
      return decideSetBackup(state, command, circumstances)
    case 'setDay':
      return decideSetDay(state, command, circumstances)
    case 'waste':
      return decideWaste(state, command)
    case 'keep':
      return decideKeep(state, command)
    case 'endKeep':
      return decideEndKeep(state, command)
    case 'wantedGone':
      return decideWantedGone(state, command, circumstances)
    case 'missScoop':
      return decideMissScoop(state, command)
    case 'scoopBack':
      return decideScoopBack(state, command)
    case 'answerAdvice':
      return decideAnswerAdvice(state, command, circumstances)
    case 'wait':
      return decideWait(state, command)
    case 'confirmClock':
      return decideConfirmClock(state)
    case 'close':
      return decideClose(state, circumstances)
  }
}

/**
 * What a command does to a service in this state, with all that follows from it: events, or a refusal.
 * Changes nothing itself. Whoever folds them too asks `take`, which does both once.
 */
export const decide = (
  state: ServiceState,
  command: Command,
  circumstances: Circumstances,
): Decision => {
  const decision = decideAlone(state, command, circumstances)
  const led = (events: readonly ServiceEvent[]) =>
    happen(state, events, { position: state.position, command: null }, circumstances).recorded.map(
      bare,
    )
  if ('events' in decision) return { events: led(decision.events) }
  const { refusal, also } = decision
  return also ? { refusal, also: led(also) } : decision
}
