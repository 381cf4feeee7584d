import { CallRefused } from '../arguments.ts';
import type { Command } from '../context.ts';

export const lot: Command = () => Promise.reject(new CallRefused('not here yet'));
