import type { Instant } from '../../studio/ids.ts';
import { t, type Text } from './text.ts';

export const dayAndTime = (at: Instant): Text => t`${{ at, show: 'day' }} ${{ at, show: 'clock' }}`;
