import { speciesListText, speciesText } from '../emit/text/species.ts';
import type { CommonOptions } from './program.ts';
import { EXIT, type World } from './world.ts';
