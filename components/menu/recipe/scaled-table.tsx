import styles from '#components/menu/recipe/recipe.module.css'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { takenApart } from '#lib/recipes/kitchen-measures.ts'
import type { Measure, ScaledLine } from '#lib/recipes/scaled-card.ts'
import type { RecipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
import { wholeOnes } from '#lib/recipes/sheet/whole-ones.ts'

/** Off by more than this, what it is exactly stands beside what is measured out. */
const SEEN = 0.005

function Measured({ measure }: { readonly measure: Measure }) {
  const words = useRecipeWords()
  const { exact, shown } = measure
  const said = words.measure(shown, exact.kind)
  const isOff = exact.kind === 'volume' && shown.kind === 'us' && Math.abs(measure.offBy) > SEEN
  const apart = isOff ? words.takenApart(takenApart(exact.size)) : null
  return (
    <>
      <b>{said}</b>
      {shown.kind === 'cans' && <small>{words.opened(shown.open)}</small>}
      {apart !== null && apart !== said && <small>{words.exactly(apart)}</small>}
    </>
  )
}

interface RowProps {
  readonly line: ScaledLine
  readonly isAsCard: boolean
  /** Made with so many whole ones of this line. */
  readonly onWhole: (typed: string) => void
}

function Row({ line, isAsCard, onWhole }: RowProps) {
  const words = useRecipeWords()
  const { amount, buy, byTaste } = line
  const whole = amount.kind === 'measured' && !isAsCard ? wholeOnes(amount.measure.exact) : null
  return (
    <tr>
      <th scope="row">
        {line.name}
        {line.line.isRecipe && <small>{words.recipePart}</small>}
      </th>
      <td>
        {amount.kind === 'to-taste' && <b>{words.toTaste}</b>}
        {amount.kind === 'measured' &&
          (isAsCard ? <b>{line.line.typed}</b> : <Measured measure={amount.measure} />)}
        {amount.kind === 'measured' && !isAsCard && <small>{words.asTyped(line.line.typed)}</small>}
        {whole && (
          <button type="button" className={styles.whole} onClick={() => onWhole(whole.typed)}>
            {words.whole(whole.typed)}
          </button>
        )}
        {amount.kind === 'not-understood' && (
          <>
            <b>{line.line.typed === '' ? '–' : line.line.typed}</b>
            <small role="alert">{words.problem(amount)}</small>
          </>
        )}
      </td>
      <td>
        {amount.kind === 'measured' && amount.also && !isAsCard && (
          <Measured measure={amount.also} />
        )}
        {amount.kind === 'measured' && <span>{words.understood(amount.measure.exact)}</span>}
      </td>
      <td data-label={words.buy}>{buy && <Measured measure={buy} />}</td>
      <td>{byTaste && byTaste !== 'to-taste' && words.byTaste(byTaste)}</td>
    </tr>
  )
}

/** What is measured out, line by line; as the card has it where it is made as it stands. */
export function ScaledTable({
  sheet,
  onWhole,
}: {
  readonly sheet: RecipeSheet
  /** The place of the line on the card, and what is at hand of it. */
  readonly onWhole: (line: number, typed: string) => void
}) {
  const words = useRecipeWords()
  const isAsCard = sheet.factor.over === sheet.factor.under
  return (
    <section className={styles.lines}>
      <table>
        <caption>{words.lines}</caption>
        <thead>
          <tr>
            <th scope="col">{words.part}</th>
            <th scope="col">{words.amount}</th>
            <th scope="col">{words.alsoAs}</th>
            <th scope="col">{words.buy}</th>
            <th scope="col">{words.tell}</th>
          </tr>
        </thead>
        <tbody>
          {sheet.lines.map((line, at) => (
            <Row
              key={`${line.line.of} ${sheet.lines.indexOf(line, at)}`}
              line={line}
              isAsCard={isAsCard}
              onWhole={(typed) => onWhole(at, typed)}
            />
          ))}
        </tbody>
      </table>
      <p>{words.rounding}</p>
    </section>
  )
}
