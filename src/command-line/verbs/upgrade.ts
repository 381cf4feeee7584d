import { CallRefused } from '../arguments.ts';
import type { Command } from '../context.ts';

export const upgrade: Command = () => Promise.reject(new CallRefused('not here yet'));
