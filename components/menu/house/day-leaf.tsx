import { CheckField, PickField } from '#components/menu/fields/pick-field.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import { RushRows } from '#components/menu/house/rush-rows.tsx'
import styles from '#components/menu/menu.module.css'
import { useMenuWords } from '#components/menu/words.tsx'

const DAY = { entity: 'day', id: 'day' } as const
const SAFETY = { entity: 'safety', id: 'safety' } as const

/** When guests come, how long food may wait, how often it is read. */
export function DayLeaf() {
  const words = useMenuWords()
  return (
    <div className={styles.grid}>
      <TypedField {...DAY} field="doors.open" type="time" label={words.house.doors} help="doors" />
      <TypedField
        {...DAY}
        field="doors.close"
        type="time"
        label={words.house.doorsClose}
        help="doors"
      />
      <TypedField
        {...DAY}
        field="closes"
        type="time"
        label={words.house.closes}
        help="doors"
        isNullWhenEmpty
      />
      <TypedField
        {...DAY}
        field="assemblers"
        as="whole"
        label={words.house.assemblers}
        help="assemblers"
      />
      <PickField
        {...SAFETY}
        field="shelf.held"
        label={words.house.shelf}
        help="collectBy"
        ways={(['none', 'hot', 'cold'] as const).map((id) => ({
          id,
          label: words.house.shelfWays[id],
        }))}
      />
      <TypedField
        {...SAFETY}
        field="shelf.collectWithinMin"
        as="whole"
        label={words.house.collectBy}
        help="collectBy"
      />
      <TypedField
        {...SAFETY}
        field="readings.everyMin"
        as="whole"
        label={words.house.everyMin}
        help="everyMin"
      />
      <TypedField
        {...SAFETY}
        field="readings.askBeforeMin"
        as="whole"
        label={words.house.askBefore}
        help="everyMin"
      />
      <CheckField
        {...SAFETY}
        field="timeProcedure"
        label={words.house.timeProcedure}
        help="timeProcedure"
      />
      <CheckField
        {...DAY}
        field="crewMeal"
        label={words.house.crewMeal}
        help="crewMeal"
        isAbsentWhenNot
      />
      <RushRows />
    </div>
  )
}
