import { computed, signal } from '@preact/signals'
import { plan } from './store.ts'

/** What is being looked at: no part of the plan, so Undo leaves it alone. */
export type QuestionNumber = 1 | 2 | 3 | 4 | 5 | 6 | 7

/** The one question that is open; null = the folded sheet. */
export const openQuestion = signal<QuestionNumber | null>(null)
/** The figure whose working is open, by its name; one at a time. */
export const openFigure = signal<string | null>(null)
/** Goal whose routes are compared; the first where it was dropped. */
const lookedAt = signal<string | null>(null)
/** Which of the two drawings the map shows. */
export const drawing = computed<'scheme' | 'network'>(() =>
  plan.value.goals.length === 0 || openQuestion.value === 2 ? 'network' : 'scheme',
)

export const goalLookedAt = computed(() => {
  const { goals } = plan.value
  return goals.find(goal => goal.target === lookedAt.value) ?? goals[0] ?? null
})

export function lookAtGoal(target: string): void {
  lookedAt.value = target
}

/** Opens a question, or folds it where it is open; `stay` never folds. */
export function turnTo(number: QuestionNumber, stay = false): void {
  openQuestion.value = openQuestion.value === number && !stay ? null : number
  openFigure.value = null
}

/** Opens a question from elsewhere on the page and brings it into sight. */
export function goTo(number: QuestionNumber): void {
  turnTo(number, true)
  requestAnimationFrame(() => {
    const summary = document.getElementById(`q${number}`)
    summary?.scrollIntoView({ block: 'start' })
    summary?.querySelector<HTMLElement>('summary')?.focus({ preventScroll: true })
  })
}

export function turnFigure(name: string): void {
  openFigure.value = openFigure.value === name ? null : name
}
