/** Checkers that are wrong in one way each; the comparison has to find every one of them. */

import type { Level } from '#lib/needs/judge.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import type { Ingredient, StationDocument } from '#lib/station/station-document.ts'
import type { Checker } from '#tests/lib/needs/oracle/checker.ts'
import { allergenCodes } from '#tests/lib/needs/oracle/laws.ts'
import type { Place } from '#tests/lib/needs/oracle/oracle.ts'
import type { Verdict } from '#tests/support/counter-verdicts.ts'

type Wrong = (right: Checker) => Checker

/** Sees another line than there is. */
const seeing =
  (other: (place: Place) => Place): Wrong =>
  (right) => {
    const seen = new WeakMap<Place, Place>()
    const see = (place: Place): Place => {
      const known = seen.get(place) ?? other(place)
      seen.set(place, known)
      return known
    }
    return {
      ...right,
      judgeComponent: (place, ...rest) => right.judgeComponent(see(place), ...rest),
      judgeTaken: (place, ...rest) => right.judgeTaken(see(place), ...rest),
      verdictsFor: (place, needs) => right.verdictsFor(see(place), needs),
    }
  }

const ofStation = (other: (station: StationDocument) => StationDocument): Wrong =>
  seeing((place) => ({ ...place, station: other(place.station) }))

const ofIngredients = (
  other: (one: Ingredient, station: StationDocument) => Partial<Ingredient>,
): Wrong =>
  ofStation((station) => ({
    ...station,
    ingredients: station.ingredients.map((one) => ({ ...one, ...other(one, station) })),
  }))

/** Hears other needs than were asked. */
const hearing =
  (other: (needs: readonly Need[]) => readonly Need[]): Wrong =>
  (right) => ({
    ...right,
    judgeComponent: (place, id, needs) => right.judgeComponent(place, id, other(needs)),
    judgeTaken: (place, taken, needs) => right.judgeTaken(place, taken, other(needs)),
    verdictsFor: (place, needs) => right.verdictsFor(place, other(needs)),
  })

const leveling =
  (other: (level: Level) => Level): Wrong =>
  (right) => ({
    ...right,
    judgeTaken: (...asked) => {
      const judged = right.judgeTaken(...asked)
      return { ...judged, level: other(judged.level) }
    },
  })

/** Says something else of each item. */
const saying =
  (other: (verdict: Verdict, station: StationDocument) => Partial<Verdict>): Wrong =>
  (right) => ({
    ...right,
    verdictsFor: (place, needs) =>
      Object.fromEntries(
        Object.entries(right.verdictsFor(place, needs)).map(([id, verdict]) => [
          id,
          { ...verdict, ...other(verdict, place.station) },
        ]),
      ),
  })

const said = (
  { declarations }: Ingredient,
  from: string,
  to: 'free' | 'unknown',
): Partial<Ingredient> => ({
  declarations: Object.fromEntries(
    Object.entries(declarations).map(([code, word]) => [code, word === from ? to : word]),
  ),
})

export const WRONG_CHECKERS: Readonly<Record<string, Wrong>> = {
  'takes what must not be for a caution': leveling((level) => (level === 'no' ? 'caution' : level)),
  'takes a caution for fine': leveling((level) => (level === 'caution' ? 'note' : level)),
  'takes what is to be asked for fine': leveling((level) => (level === 'ask' ? 'ok' : level)),
  'takes a note for a question': leveling((level) => (level === 'note' ? 'ask' : level)),
  'rules out what is fine': leveling((level) => (level === 'ok' ? 'no' : level)),
  'takes for free what no label declares': ofIngredients((one, station) => ({
    declarations: {
      ...Object.fromEntries(allergenCodes(station).map((code) => [code, 'free' as const])),
      ...one.declarations,
    },
  })),
  'takes for free what is declared unknown': ofIngredients((one) => said(one, 'unknown', 'free')),
  'is deaf to warnings': ofIngredients((one) => said(one, 'may-contain', 'free')),
  'takes warnings for unknown': ofIngredients((one) => said(one, 'may-contain', 'unknown')),
  'believes labels that nobody read': ofIngredients(() => ({ readOn: '2026-11-20' })),
  'takes for plant what nobody read': ofIngredients(({ traits }) => ({ traits: traits ?? [] })),
  'infers what no certificate says': ofIngredients(({ claims }) => ({
    claims: { halal: 'declared', kosher: 'declared', ...claims },
  })),
  'takes what is free of wheat for free of gluten': ofIngredients(({ declarations }) => ({
    declarations:
      declarations.wheat === 'free' ? { gluten: 'free', ...declarations } : declarations,
  })),
  'takes what is declared free of gluten beside wheat at its word': ofIngredients(
    ({ declarations }) => (declarations.gluten === 'free' ? { glutenStatement: true } : {}),
  ),
  'is deaf to the statement beside wheat': ofIngredients(() => ({ glutenStatement: undefined })),
  'believes the statement beside barley and rye': ofIngredients(({ declarations }) => {
    const { barley: _, rye: __, ...others } = declarations
    return declarations.gluten === 'free' ? { declarations: others } : {}
  }),
  'clears what comes of an unnamed animal by another on its label': ofIngredients(
    ({ traits, sources }) => {
      const named = (['pork', 'beef', 'poultry', 'fish', 'shellfish'] as const).filter((one) =>
        traits?.includes(one),
      )
      const own = { stock: [], lard: [], gelatin: [], 'animal-rennet': [], ...sources }
      return {
        sources: Object.fromEntries(
          Object.entries(own).map(([trait, of]) => [trait, of.length > 0 ? of : named]),
        ),
      }
    },
  ),
  'forgets what is named': ofIngredients(() => ({ sources: undefined })),
  'takes one source for all': ofIngredients(({ sources = {} }) => {
    const [first] = Object.values(sources).filter((of) => of.length > 0)
    const own = Object.entries(sources).filter(([, of]) => of.length > 0)
    return first
      ? {
          sources: {
            ...{ stock: first, lard: first, gelatin: first, 'animal-rennet': first },
            ...Object.fromEntries(own),
          },
        }
      : {}
  }),
  'takes lard for nothing but pork': ofIngredients(({ sources }) => ({
    sources: { lard: ['pork'], ...sources },
  })),
  'forgets honey': ofIngredients(({ traits }) => ({
    traits: traits?.filter((one) => one !== 'honey') ?? null,
  })),
  'forgets recipes': ofStation((station) => ({
    ...station,
    components: station.components.map((one) => ({ ...one, recipes: [] })),
  })),
  'forgets recipes in recipes': ofStation((station) => ({
    ...station,
    recipes: station.recipes.map((one) => ({ ...one, recipes: [] })),
  })),
  'forgets the last contact': ofStation((station) => ({
    ...station,
    contacts: station.contacts?.slice(0, -1) ?? null,
  })),
  'takes contact that nobody told for none': ofStation((station) => ({
    ...station,
    contacts: station.contacts ?? [],
  })),
  'sees a griddle as a scoop': ofStation((station) => ({
    ...station,
    contacts: station.contacts?.map((one) => ({ ...one, kind: 'scoop' })) ?? null,
  })),
  'sees a scoop as a griddle': ofStation((station) => ({
    ...station,
    contacts: station.contacts?.map((one) => ({ ...one, kind: 'griddle' })) ?? null,
  })),
  'accepts at a station that blocks': ofStation((station) => ({ ...station, cautions: 'ask' })),
  'takes every back-up pan for protected': ofStation((station) => ({
    ...station,
    backups: station.backups.map((one) => ({ ...one, protected: true })),
  })),
  'takes every back-up pan for ready': seeing((place) => ({
    ...place,
    ready: place.station.backups.map((one) => one.component),
  })),
  'forgets back-up pans': seeing((place) => ({ ...place, ready: [] })),
  'forgets soiled pans': seeing((place) => ({ ...place, soiled: [] })),
  'takes a scoop in a pan for one in both': seeing((place) => ({
    ...place,
    soiled: place.soiled.flatMap(({ component, by }) => [
      { component, by },
      { component: by, by: component },
    ]),
  })),
  'takes a scoop for the other': seeing((place) => ({
    ...place,
    soiled: place.soiled.map(({ component, by }) => ({ component: by, by: component })),
  })),
  'forgets lent scoops': seeing((place) => ({ ...place, lent: [] })),
  'takes a lent scoop for one way': seeing((place) => ({
    ...place,
    soiled: [...place.soiled, ...place.lent],
    lent: [],
  })),
  'leaves out what is to be kept apart': hearing((needs) =>
    needs.map((one) => ({ ...one, handling: 'leave-out' })),
  ),
  'keeps apart what is to be left out': hearing((needs) =>
    needs.map((one) => ({ ...one, handling: 'keep-apart' })),
  ),
  'hears the first need only': hearing((needs) => needs.slice(0, 1)),
  'hears the last need only': hearing((needs) => needs.slice(-1)),
  'does not count the side': (right) => ({
    ...right,
    taken: (choice) =>
      right
        .taken(choice)
        .filter((id) => id === choice.base || choice.parts[id]?.placement !== 'side'),
  }),
  'does not judge the base': (right) => ({
    ...right,
    judgeTaken: (place, taken, needs) =>
      right.judgeTaken(
        place,
        taken.filter((id) => !place.station.items.some((one) => one.base?.choices.includes(id))),
        needs,
      ),
  }),
  'names no more than one reason': (right) => ({
    ...right,
    judgeTaken: (...asked) => {
      const judged = right.judgeTaken(...asked)
      return { ...judged, findings: judged.findings.slice(0, 1) }
    },
  }),
  'names the least first': (right) => ({
    ...right,
    judgeTaken: (...asked) => {
      const judged = right.judgeTaken(...asked)
      return { ...judged, findings: judged.findings.toReversed() }
    },
  }),
  'says that things are less bad than they are': (right) => ({
    ...right,
    judgeComponent: (...asked) => {
      const judged = right.judgeComponent(...asked)
      return {
        ...judged,
        findings: judged.findings.map((one) => ({
          ...one,
          states: Object.fromEntries(Object.keys(one.states).map((id) => [id, 'may-contain'])),
        })),
      }
    },
  }),
  'takes a component out of the wrong pan': (right) => ({
    ...right,
    judgeTaken: (...asked) => ({ ...right.judgeTaken(...asked), fromBackup: [] }),
  }),
  'lets every item fit': saying(() => ({ kind: 'fits', leaveOut: [], bases: null })),
  'offers no item that would fit': saying(({ kind }) =>
    kind === 'with-change' ? { kind: 'no', leaveOut: [], bases: null } : {},
  ),
  'leaves out one part less': saying(({ leaveOut }) => ({ leaveOut: leaveOut.slice(1) })),
  'leaves out one part more': saying((verdict, station) => {
    const more = station.items
      .find((one) => one.id === verdict.item)
      ?.parts.find((one) => one.usual !== 'no' && !verdict.leaveOut.includes(one.component))
    return verdict.kind === 'with-change' && more
      ? { leaveOut: [...verdict.leaveOut, more.component] }
      : {}
  }),
  'keeps the usual base': saying(() => ({ bases: null })),
  'offers one of the equal bases': saying(({ bases }) => ({ bases: bases?.slice(0, 1) ?? null })),
  'says no more why': saying(() => ({ findings: [] })),
  'fails now and then': (right) => ({
    ...right,
    verdictsFor: (place, needs) => {
      if (needs.length > 1) throw new Error('the checker fails')
      return right.verdictsFor(place, needs)
    },
  }),
}
