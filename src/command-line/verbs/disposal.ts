import { CallRefused } from '../arguments.ts';
import type { Command } from '../context.ts';

export const disposal: Command = () => Promise.reject(new CallRefused('not here yet'));
