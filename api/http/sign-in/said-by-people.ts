import { z } from '@hono/zod-openapi';
import { PASSWORD_LENGTHS } from './password-hash.ts';

/** A password that is being set. */
export const newPassword = z
  .string()
  .min(PASSWORD_LENGTHS.least, `must have ${PASSWORD_LENGTHS.least} characters or more`)
  .max(PASSWORD_LENGTHS.most, `must have ${PASSWORD_LENGTHS.most} characters or fewer`);

/** A password that is compared: whatever its length was meant to be, a bounded one. */
export const givenPassword = z.string().min(1, 'must be given').max(1000, 'is far too long');

/** An e-mail address, in lower case; that letters arrive there is not looked into. */
export const email = z
  .string()
  .trim()
  .max(254, 'must have 254 characters or fewer')
  .toLowerCase()
  .regex(/^[^\s@]+@[^\s@]+$/, 'must be an e-mail address');

/** A person's name. */
export const personName = z
  .string()
  .trim()
  .min(1, 'must be given')
  .max(100, 'must have 100 characters or fewer')
  .regex(/^[^\p{Cc}\p{Cs}]*$/u, 'must have no control characters');
