/** What the first load leaves out. It is fetched when the page rests, since the network may drop. */
import { later } from '#components/counter/later.tsx'

export const parts = {
  choose: later(async () => (await import('#components/counter/choose-step.tsx')).ChooseStep),
  itemRows: later(async () => (await import('#components/counter/item-rows.tsx')).ItemRows),
  lineTold: later(async () => (await import('#components/counter/line-told.tsx')).LineTold),
  orderBar: later(async () => (await import('#components/counter/order-bar.tsx')).OrderBar),
  heldStrip: later(async () => (await import('#components/counter/held-strip.tsx')).HeldStrip),
  notSure: later(async () => (await import('#components/counter/not-sure-step.tsx')).NotSureStep),
  needDetail: later(async () => (await import('#components/counter/need-detail.tsx')).NeedDetail),
  moreNeeds: later(async () => (await import('#components/counter/more-needs.tsx')).MoreNeeds),
  tellPanel: later(async () => (await import('#components/counter/tell-panel.tsx')).TellPanel),
  toldOthers: later(
    async () => (await import('#components/counter/told-others-step.tsx')).ToldOthersStep,
  ),
  inCharge: later(
    async () => (await import('#components/counter/in-charge-step.tsx')).InChargeStep,
  ),
  turned: later(async () => (await import('#components/counter/turned-step.tsx')).TurnedStep),
  arrived: later(
    async () => (await import('#components/counter/arrived-orders.tsx')).ArrivedOrders,
  ),
  keptOrder: later(async () => (await import('#components/counter/kept-order.tsx')).KeptOrder),
  tickets: later(async () => (await import('#components/counter/tickets-step.tsx')).TicketsStep),
}

/** Settles when everything is there. @throws where the network dropped before: to be tried again. */
export const fetchLaterParts = async (): Promise<void> => {
  await Promise.all(Object.values(parts).map(({ fetch }) => fetch()))
}
