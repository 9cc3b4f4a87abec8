/** Spanish for the words of the shipped profiles that reach paper: names, portions, chores. What is not here stays as it is written. */
export const PROFILE_WORDS_ES: Readonly<Record<string, string>> = {
  'Ball (royal) python': 'Pitón real (pitón bola)',
  'Inland bearded dragon': 'Dragón barbudo',
  'Corn snake': 'Serpiente del maíz',
  'Crested gecko': 'Geco crestado',
  'Dyeing poison frog': 'Rana dardo tintorera',
  'Giant day gecko': 'Geco diurno gigante',
  'Green iguana': 'Iguana verde',
  "Hermann's tortoise (indoors, awake all year)": 'Tortuga mediterránea (en interior, despierta todo el año)',
  "Jackson's chameleon": 'Camaleón de Jackson',
  'Leopard gecko': 'Geco leopardo',
  'Panther chameleon': 'Camaleón pantera',
  'Red-eyed tree frog': 'Rana arborícola de ojos rojos',
  'Veiled chameleon': 'Camaleón del Yemen',
  'the head is wide': 'el ancho de la cabeza',
  'the space between the eyes': 'la distancia entre los ojos',
  'a fruit fly': 'una mosca de la fruta',
  'a small fruit fly': 'una mosca de la fruta pequeña',
  'a shell-sized heap of high-fibre weeds; no fruit, no pulses, no meat':
    'un montón del tamaño del caparazón de hierbas ricas en fibra; sin fruta, sin legumbres, sin carne',
  'a bowl of dark leafy greens with a little other vegetable and fruit':
    'un cuenco de hojas verdes oscuras con un poco de otras verduras y fruta',
  'a heap the size of the head and neck': 'un montón del tamaño de la cabeza y el cuello',
  'a small heap': 'un montón pequeño',
  '1 killed rodent, as wide as the widest part of the snake':
    '1 roedor muerto, tan ancho como la parte más ancha de la serpiente',
  'one small bowl of fruit and nectar diet': 'un cuenco pequeño de dieta de fruta y néctar',
  'one small bowl of the complete diet': 'un cuenco pequeño de la dieta completa',
  'Feel the substrate: surface dry, slightly damp below':
    'Palpar el sustrato: seco en la superficie, algo húmedo debajo',
  'Fresh dechlorinated water in the dish, in gloves rinsed of powder':
    'Agua fresca sin cloro en el recipiente, con guantes enjuagados de polvo',
};
