import { accessViews } from './views/access.ts'
import { assemblyViews } from './views/assembly.ts'
import { batchesViews } from './views/batches.ts'
import { counterViews } from './views/counter.ts'
import { handOverViews } from './views/hand-over.ts'
import { labelViews } from './views/label.ts'
import { larderViews } from './views/larder.ts'
import { menuViews } from './views/menu.ts'
import { pansViews } from './views/pans.ts'
import { paperViews } from './views/paper.ts'
import { planViews } from './views/plan.ts'
import { prepViews } from './views/prep.ts'
import { tastingViews } from './views/tasting.ts'
import { on, type View } from './views/view.ts'

const start = on('/', 'start')
const pickUp = on('/pick-up', 'pick-up')

/** Every screen in the states that it has; no view changes its service. */
export const views: readonly View[] = [
  start('open', 'quiet', 'To the counter'),
  start('own station', 'school, planned', /^Fri, Dec 4, 11:20/),
  start('two stations', 'school, two stations', 'Soup line'),
  start('never opened', 'school, never opened', /over, never opened/),
  start('closed', 'closed', 'Open a demo service'),
  ...accessViews,
  ...counterViews,
  ...assemblyViews,
  ...handOverViews,
  ...pansViews,
  ...labelViews,
  ...menuViews,
  ...planViews,
  ...prepViews,
  ...batchesViews,
  ...larderViews,
  ...tastingViews,
  ...paperViews,
  pickUp('empty', 'quiet', 'None yet'),
  pickUp('rush', 'rush', '4-A'),
  pickUp('many', 'many-on-shelf', '10-D'),
  pickUp('one', 'one-made', '1'),
  pickUp('fifteen', 'fifteen-tickets', '17'),
  pickUp('called', 'held', 'Please come to the counter'),
  pickUp('closed', 'closed', 'Closed now'),
]

export const view = (name: string): View => {
  const found = views.find((one) => one.name === name)
  if (!found) throw new Error(`no view is called ${name}`)
  return found
}
