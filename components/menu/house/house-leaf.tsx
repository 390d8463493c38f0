import { ListField, PickField } from '#components/menu/fields/pick-field.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import styles from '#components/menu/menu.module.css'
import { useMenuWords } from '#components/menu/words.tsx'

const LOCALES = ['en-US', 'en-CA', 'en-GB', 'en-IE', 'en-AU', 'en-NZ'] as const
const CURRENCIES = ['USD', 'CAD', 'GBP', 'EUR', 'AUD', 'NZD'] as const

const zones = (): readonly { readonly id: string; readonly label: string }[] =>
  Intl.supportedValuesOf('timeZone').map((id) => ({ id, label: id.replaceAll('_', ' ') }))

const HOUSE = { entity: 'house', id: 'house' } as const

/** What it is called, where it is, and how it writes. */
export function HouseLeaf() {
  const words = useMenuWords()
  return (
    <div className={styles.grid}>
      <TypedField {...HOUSE} field="name" label={words.house.name} help="name" />
      <ListField
        {...HOUSE}
        field="timeZone"
        label={words.house.timeZone}
        help="timeZone"
        options={zones()}
      />
      <ListField
        {...HOUSE}
        field="locale"
        label={words.house.locale}
        help="locale"
        options={LOCALES.map((id) => ({ id, label: words.house.locales[id] }))}
      />
      <ListField
        {...HOUSE}
        field="currency"
        label={words.house.currency}
        help="currency"
        options={CURRENCIES.map((id) => ({ id, label: id }))}
      />
      <PickField
        entity="safety"
        id="safety"
        field="scale"
        label={words.house.scale}
        help="scale"
        ways={[
          { id: 'F', label: words.house.scales.F },
          { id: 'C', label: words.house.scales.C },
        ]}
      />
      <PickField
        {...HOUSE}
        field="tax.inPrices"
        label={words.house.tax}
        help="tax"
        ways={[
          { id: 'in', label: words.house.taxIn },
          { id: 'on', label: words.house.taxOn },
        ]}
        kept={(id) => id === 'in'}
      />
      <TypedField
        {...HOUSE}
        field="tax.rateBasisPoints"
        as="percent"
        label={words.house.rate}
        help="tax"
        isNullWhenEmpty
      />
    </div>
  )
}
