import styles from '#components/care/label-answers.module.css'
import { useLabelWords } from '#components/care/label-words.tsx'
import { pansWith } from '#lib/rooms/care/facts/product-before.ts'
import { isNotSame, PRODUCTS, type Product } from '#lib/rooms/care/views/labels.ts'
import type { RunningState } from '#lib/service/state.ts'

interface LabelProductProps {
  readonly state: RunningState
  readonly ingredient: string
  readonly product: Product
  readonly onChange: (product: Product) => void
}

/** Whether the label is of what is in the pans, or of what comes into them from now on. */
export function LabelProduct({ state, ingredient, product, onChange }: LabelProductProps) {
  const words = useLabelWords()
  const isFixed = isNotSame(state, ingredient)
  return (
    <fieldset className={styles.product}>
      <legend>{words.product}</legend>
      {PRODUCTS.map((one) => (
        <label key={one}>
          <input
            type="radio"
            name="label-product"
            checked={product === one}
            disabled={isFixed && one !== 'other'}
            onChange={() => onChange(one)}
          />
          <span>{words.products[one]}</span>
        </label>
      ))}
      <p>
        {isFixed && `${words.productFixed} `}
        {product === 'other' ? words.both(pansWith(state, ingredient)) : words.corrected}
      </p>
    </fieldset>
  )
}
