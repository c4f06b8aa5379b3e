import { isTyping } from '../controllers/focus.ts';

/** What a key means for the whole job; null for nothing. While text is typed, undoing is the text's own. */
export function jobKey(event: KeyboardEvent): 'keep' | 'undo' | 'redo' | null {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return null;
  const key = event.key.toLowerCase();
  if (key === 's') return 'keep';
  if (isTyping(event)) return null;
  if (key === 'z' && !event.shiftKey) return 'undo';
  return key === 'y' || key === 'z' ? 'redo' : null;
}
