/** All that the set-up screens say, in English. */

import { sayChange } from '#lib/editor/words/changes-en.ts'
import { sayClash } from '#lib/editor/words/clash-en.ts'
import { fieldName, rowName, rowNamed } from '#lib/editor/words/fields-en.ts'
import { menuHelpEn } from '#lib/editor/words/help-en.ts'
import { menuHouseEn } from '#lib/editor/words/house-en.ts'
import { menuItemEn } from '#lib/editor/words/item-en.ts'
import { menuLimitsEn } from '#lib/editor/words/limits-en.ts'
import { menuLineEn } from '#lib/editor/words/line-en.ts'
import { sayCosts, sayMissing } from '#lib/editor/words/missing-en.ts'
import { menuPanEn } from '#lib/editor/words/pan-en.ts'
import { sayProblem, sayRefusedStep } from '#lib/editor/words/problems-en.ts'
import { menuPublishEn, sayPublishRefused } from '#lib/editor/words/publish-en.ts'
import { menuScreenEn } from '#lib/editor/words/screen-en.ts'
import { menuToolEn } from '#lib/editor/words/tool-en.ts'
import { sayCents, sayFluidOunces, sayWeight } from '#lib/words/amounts-en.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { costEn } from '#lib/words/recipe/cost-en.ts'
import { sayPortionTotal } from '#lib/words/recipe/portion-total-en.ts'
import { sayUnderstood } from '#lib/words/recipe/understood-en.ts'

export const menuEn = {
  screen: menuScreenEn,
  line: menuLineEn,
  pan: menuPanEn,
  item: menuItemEn,
  cost: costEn,
  house: menuHouseEn,
  limits: menuLimitsEn,
  publish: menuPublishEn,
  help: menuHelpEn,
  ...menuToolEn,
  sayCents,
  sayFluidOunces,
  sayPortionTotal,
  sayWeight,
  date: sayDate,
  understood: sayUnderstood,
  fieldName,
  rowName,
  rowNamed,
  problem: sayProblem,
  refusedStep: sayRefusedStep,
  missing: sayMissing,
  costs: sayCosts,
  change: sayChange,
  clash: sayClash,
  publishRefused: sayPublishRefused,
} as const
