import { useState } from 'react'
import styles from '#components/menu/recipe/recipe.module.css'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import type { Card } from '#lib/recipes/card.ts'
import { MOST_STEP, MOST_STEPS, stepsProblem, typedSteps } from '#lib/recipes/sheet/typed-steps.ts'

/** How it is made, one step a line; what is typed stays while the draft is told anew. */
export function MethodPanel({ now, card }: { readonly now: RecipeNow; readonly card: Card }) {
  const { method: words } = useRecipeWords()
  const [typed, setTyped] = useState<string | null>(null)
  const [isFailed, setFailed] = useState(false)
  const shown = typed ?? now.steps.join('\n')
  const problem = stepsProblem(typedSteps(shown))
  const save = async () => {
    if (typed === null) return
    const steps = typedSteps(typed)
    const isTaken = await now.put(
      'recipe',
      card.id,
      steps.length === 0 ? {} : { steps },
      steps.length === 0 ? ['steps'] : [],
    )
    setFailed(!isTaken)
    if (isTaken) setTyped(null)
  }
  return (
    <section className={styles.method} aria-label={words.title}>
      <label>
        <span>{words.title}</span>
        <small>{words.hint}</small>
        <textarea
          rows={Math.max(4, Math.min(12, shown.split('\n').length + 1))}
          maxLength={MOST_STEP * MOST_STEPS}
          placeholder={words.example}
          value={shown}
          aria-invalid={problem !== null || undefined}
          // A browser shows the line that is typed on, and may leave the rest below the window.
          onFocus={({ target }) => target.scrollIntoView({ block: 'nearest' })}
          onChange={({ target }) => setTyped(target.value)}
          onBlur={() => void save()}
        />
      </label>
      {problem !== null && <p role="alert">{words.problem(problem)}</p>}
      {isFailed && <p role="alert">{words.notSaved}</p>}
    </section>
  )
}
