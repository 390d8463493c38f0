import { pansOf } from '#lib/menu/find.ts'
import type { Command } from '#lib/service/decide.ts'
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** What could be said of stock, demand, the day and advice, the likeliest first. */
export const ofTheStock = (state: RunningState): readonly Command[] => {
  const components = state.station.components.map(({ id }) => id)
  const item = state.station.items[0]?.id ?? ''
  return [
    { type: 'setDay', assemblers: state.assemblers === 1 ? 2 : 1 },
    ...pansOf(state.station).map(
      (pan): Command => ({ type: 'waste', pan: pan.id, amount: 1, reason: 'dropped' }),
    ),
    ...components.flatMap((component): Command[] => [
      { type: 'keep', component, portions: 1, for: [item] },
      { type: 'endKeep', component },
      { type: 'wantedGone', component },
      { type: 'missScoop', component },
      { type: 'scoopBack', component, washed: true },
    ]),
    ...state.adviceLog
      .filter(({ answer }) => answer === 'open')
      .map(({ key }): Command => ({ type: 'answerAdvice', key, answer: 'done' })),
    ...openBuilds(state).map(
      ({ ticket, build }): Command => ({
        type: 'wait',
        ticket: ticket.number,
        letter: build.letter,
      }),
    ),
  ]
}
