/** The cautions in Spanish, by id. */
import type { CautionId } from './caution-texts.ts';

export const PRACTICE_ES = 'práctica común, sin fuente';

export const CAUTIONS_ES: Readonly<Record<CautionId, string>> = {
  'verify-with-vet':
    'Son puntos de partida de fuentes de calidad desigual; la especie, la etapa y el individuo varían. Decide un veterinario colegiado con experiencia en reptiles y anfibios. Señales de urgencia: respira con la boca abierta, se desploma, no come, extremidades hinchadas, ojos hundidos.',
  salmonella:
    'Reptiles y anfibios pueden llevar Salmonella y parecer sanos. Lávese las manos con jabón justo después de tocar el animal, su comida, su agua o su terrario; vigile a los niños.',
  'people-at-risk':
    'Menores de 5 años, mayores de 65, embarazadas y personas con defensas bajas deben evitar el contacto.',
  'out-of-kitchens':
    'Los animales y su material, fuera de la cocina; limpie los depósitos al aire libre, o limpie a fondo la bañera después. No vacíe agua con un sifón cebado con la boca.',
  'mains-near-water':
    'Corriente cerca del agua: toma con interruptor diferencial (30 mA según IEC; GFCI en América del Norte), un lazo de goteo en cada cable, las conexiones por encima del nivel del agua y nunca en el suelo.',
  'unplug-first':
    'Desenchufe antes de meter las manos en el agua o de tocar lámparas y bombas. Las normas eléctricas locales y un electricista cualificado mandan sobre esta hoja.',
  'timer-ratings':
    'Compruebe la potencia de temporizador y regleta: lámparas con balasto y bombas son cargas inductivas; nunca supere la placa; ninguna regleta enchufada en otra.',
  'heat-on-thermostat':
    'Toda fuente de calor, con termostato y protegida con malla. Un temporizador conecta y corta; no regula el calor.',
  'hot-lamps':
    'Las lámparas calientes queman a animales y personas y pueden estallar si se mojan: aleje las boquillas, rocíe con la lámpara de asoleo apagada o protegida. Nada por donde trepar debe acercar a una lámpara caliente más que el lugar de asoleo.',
  'shield-the-lamp':
    'Aquí se rocía con una lámpara caliente encendida: proteja la lámpara, aparte la boquilla y vuelva a mirar tras cada cambio.',
  'lamp-distance': 'La lámpara de asoleo queda al menos a 25 o 30 cm del lomo del animal.',
  'uv-lamps':
    'Las lámparas UV pueden dañar los ojos: no las mire, guarde la distancia que indica el fabricante, ofrezca siempre sombra y mida el índice UV en el lugar de asoleo.',
  'no-uv-through-glass': 'El vidrio y el plástico detienen los UVB: el sol a través de una ventana no cuenta.',
  'no-glass-in-sun': 'Nunca ponga un terrario de vidrio al sol directo: se calienta enseguida.',
  vitamins:
    'La vitamina A y la D3 pueden darse en exceso. No junte dos productos con la misma vitamina; no inyecte; ante señales, al veterinario. Cuánto es cosa de la etiqueta y del veterinario.',
  'power-cut':
    'Corte de luz: aísle; nada de llamas ni generadores dentro de casa. Al volver la corriente, ponga en hora cada temporizador mecánico, que estuvo parado, y revise lámparas, bomba y termostatos. También se paran bomba y goteo: la reserva es un pulverizador de mano.',
  'dial-clocks':
    'Un temporizador de pestañas no sabe de cambios de hora ni de estaciones: compárelo con un reloj cada semana.',
  'pump-can-flood':
    'Una bomba de nebulización en una pestaña de un cuarto de hora puede inundar el terrario: en medio va un temporizador de segundos. Nunca deje la bomba en seco; ponga un desagüe o una bandeja.',
  'repeat-timer-flicker':
    'Un temporizador cíclico empieza conectado cada vez que llega la corriente, también tras un parpadeo: mire la bandeja después de una tormenta.',
  'standing-water':
    'El agua templada estancada puede criar bacterias, entre ellas Legionella: cámbiela y friegue según el plan.',
  'rest-only-if-checked':
    'Nunca deje invernar a un animal enfermo, bajo de peso, recién alimentado o sin revisión veterinaria.',
};
