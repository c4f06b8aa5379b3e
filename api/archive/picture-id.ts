import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/**
 * How a picture is named: the SHA-256 of its bytes, hexadecimal. Worked out here, since over plain HTTP browsers have no hash
 * of their own.
 */
export const pictureId = (bytes: Uint8Array): string => bytesToHex(sha256(bytes));
