import { z } from 'zod'
import { answerAdviceSchema, decideAnswerAdvice } from '#lib/service/commands/advice.ts'
import {
  decideFinishBatch,
  decideRecordCooking,
  decideStartBatch,
  finishBatchSchema,
  recordCookingSchema,
  startBatchSchema,
} from '#lib/service/commands/batch.ts'
import { changeSchema, decideChange } from '#lib/service/commands/change.ts'
import {
  closeSchema,
  confirmClockSchema,
  decideClose,
  decideConfirmClock,
} from '#lib/service/commands/close.ts'
import {
  decideRecordCooling,
  decideRecordReheating,
  recordCoolingSchema,
  recordReheatingSchema,
} from '#lib/service/commands/cooling.ts'
import { correctSchema, decideCorrect } from '#lib/service/commands/correct.ts'
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
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
  changePanSchema,
  decideChangePan,
  decideLoad,
  decideTopUp,
  loadSchema,
  topUpSchema,
} from '#lib/service/commands/load.ts'
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
import {
  acknowledgeSchema,
  cancelSchema,
  decideAcknowledge,
  decideCancel,
} from '#lib/service/commands/stop-build.ts'
import { decideTellNeed, tellNeedSchema } from '#lib/service/commands/tell-need.ts'
import {
  decideReadTemperature,
  decideResolveOffSale,
  readTemperatureSchema,
  resolveOffSaleSchema,
} from '#lib/service/commands/temperature.ts'
import { decideThrowOut, throwOutSchema } from '#lib/service/commands/throw-out.ts'
import { decideStartTimeClock, startTimeClockSchema } from '#lib/service/commands/time-clock.ts'
import { decideWait, waitSchema } from '#lib/service/commands/wait.ts'
import { decideWantedGone, wantedGoneSchema } from '#lib/service/commands/wanted-gone.ts'
import { decideWaste, wasteSchema } from '#lib/service/commands/waste.ts'
import type { ServiceState } from '#lib/service/state.ts'

/** Every command, as it may come from outside. */
export const commandSchema = z.discriminatedUnion('type', [
  openSchema,
  startBatchSchema,
  recordCookingSchema,
  finishBatchSchema,
  recordCoolingSchema,
  recordReheatingSchema,
  startTimeClockSchema,
  loadSchema,
  changePanSchema,
  topUpSchema,
  readTemperatureSchema,
  resolveOffSaleSchema,
  throwOutSchema,
  correctSchema,
  sendSchema,
  changeSchema,
  cancelSchema,
  acknowledgeSchema,
  startSchema,
  finishSchema,
  takeBackSchema,
  remakeSchema,
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

/** What a command does to a service in this state: events, or a refusal. Changes nothing itself. */
export const decide = (
  state: ServiceState,
  command: Command,
  circumstances: Circumstances,
): Decision => {
  switch (command.type) {
    case 'open':
      return decideOpen(state, command, circumstances)
    case 'startBatch':
      return decideStartBatch(state, command, circumstances)
    case 'recordCooking':
      return decideRecordCooking(state, command, circumstances)
    case 'finishBatch':
      return decideFinishBatch(state, command, circumstances)
    case 'recordCooling':
      return decideRecordCooling(state, command, circumstances)
    case 'recordReheating':
      return decideRecordReheating(state, command, circumstances)
    case 'startTimeClock':
      return decideStartTimeClock(state, command, circumstances)
    case 'topUp':
      return decideTopUp(state, command, circumstances)
    case 'readTemperature':
      return decideReadTemperature(state, command, circumstances)
    case 'resolveOffSale':
      return decideResolveOffSale(state, command, circumstances)
    case 'throwOut':
      return decideThrowOut(state, command, circumstances)
    case 'load':
      return decideLoad(state, command, circumstances)
    case 'changePan':
      return decideChangePan(state, command, circumstances)
    case 'correct':
      return decideCorrect(state, command)
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
      return decideSoilPan(state, command, circumstances)
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
      return decideWantedGone(state, command)
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
