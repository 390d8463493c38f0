/** Papers as they are chosen and shown before they are printed. */
import { frameEn } from '#lib/paper/words/frame-en.ts'
import { labelsEn as words } from '#lib/paper/words/labels-screen-en.ts'
import { LOTS, toldLots } from './larder.ts'
import { RECIPE, toldMenu, whole } from './menu.ts'
import { on, type View } from './view.ts'

const paper = on('/paper/labels', 'paper')
const card = on('/menu', 'paper')
const lots = on('/paper/larder', 'paper')
const sheet = on('/paper/allergens', 'paper')

const LONG = { long: true, asksOnly: true } as const

export const paperViews: readonly View[] = [
  paper('labels', 'ready to load', words.kinds.backup, [], { long: true }),
  toldLots(LOTS)(lots('larder labels', 'quiet', words.stockIs, [], LONG)),
  toldMenu(
    card('recipe card', 'quiet', frameEn.print, [], LONG),
    undefined,
    whole,
    RECIPE.replace('/menu/', '/paper/'),
  ),
  sheet('allergen sheet', 'quiet', frameEn.print, [], LONG),
]
