import { CallRefused } from '../arguments.ts';
import type { Command } from '../context.ts';

export const closing: Command = () => Promise.reject(new CallRefused('not here yet'));
