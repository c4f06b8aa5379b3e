/** A day that exists, as ISO writes it. */
export const isDay = (text: string): boolean => {
  const at = new Date(`${text}T00:00:00Z`);
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
};

/** Today in UTC, ISO. */
export const today = (): string => new Date().toISOString().slice(0, 10);
