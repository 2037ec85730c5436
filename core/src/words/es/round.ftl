# Las palabras del día: vencimientos y cobertura, lista de carga, orden del día, lo usado, historial.

## Vencimientos y cobertura

due-today = Vence hoy
due-tomorrow = Vence mañana
due-yesterday = Venció ayer
due-in = Vence en { $days } días
due-ago = Venció hace { $days } días
due-without-cover = { $when } ({ $on }).
due-with-cover = { $when }, { $cover }.
cover-ends-in = la cobertura termina en { $days }
cover-ends-today = la cobertura termina hoy
cover-ended-yesterday = la cobertura terminó ayer
cover-ended-ago = la cobertura terminó hace { $days } días
due-from-last = Último servicio { $from }, cada { $months } meses: { $on }; días de gracia: { $grace }, hasta { $end }.
due-from-first = En servicio desde { $from }, primer servicio dentro de { $months } meses: { $on }; días de gracia: { $grace }, hasta { $end }.

cover-title = Condiciones de cobertura
cover-as-asked = Según las condiciones «{ $terms }»: lo que piden está, hasta donde se ve aquí. Decide la garantía.
cover-not-as-asked = Según las condiciones «{ $terms }»: no está todo lo que piden. Decide la garantía.
cover-not-known = Según las condiciones «{ $terms }»: aquí no se sabe todo. Decide la garantía.
cover-in-time = A tiempo: vence el { $on }.
cover-in-grace = Pasado el vencimiento, días: { $days }. Dentro de los días de gracia, que terminan el { $end }.
cover-late = Los días de gracia terminaron el { $end }, hace días: { $days }.
cover-day-not-known = Aquí no se sabe desde qué día contar.
cover-accredited = «{ $name }» vale hasta { $until }.
cover-accredited-always = «{ $name }» vale.
cover-lapsed = «{ $name }» venció el { $on }.
cover-not-accredited = El técnico no tiene «{ $name }».
cover-accreditation-not-known = Aquí no se sabe si el técnico tiene «{ $name }».
cover-no-shot = Sin fotografía: { $shot }.
cover-no-reading = Sin lectura: { $reading }.
cover-evidence = Están todas las fotografías y lecturas que piden: { $count }.
cover-shot-not-in-pack = Piden una fotografía que este procedimiento no tiene: { $shot }.
cover-reading-not-in-pack = Piden una lectura que este procedimiento no tiene: { $reading }.
cover-stopped = La visita se detuvo antes del final.

## Habilitaciones

lapse-title = Habilitaciones
lapse-lapsed = «{ $name }» venció el { $on }.
lapse-soon = «{ $name }» vale hasta { $on }, días que quedan: { $days }.
lapse-none = No hay «{ $name }».
lapse-means = La piden las condiciones de cobertura en: { $sites }. Hablar con la oficina antes de ir.
lapse-means-soon = La piden las condiciones de cobertura en: { $sites }. Renovarla a tiempo.
lapse-means-nothing = Ninguna visita de esta ronda la pide.

## El orden del día

round-later = Más adelante
round-to-load = Lista de carga del día
round-there = Llegada hacia las { $arrive }, fin hacia las { $leave }.
round-there-way = Llegada hacia las { $arrive } tras { $km } km, fin hacia las { $leave }.
round-wait = El trabajo empieza a las { $begin }, como se acordó.
round-forecast-past = Tiempo en el lugar: unos { $minutes } min, el medio de { $visits } visitas pasadas; la mitad llevó de { $least } a { $most } min.
round-forecast-steps = Tiempo en el lugar: unos { $minutes } min por los pasos del procedimiento; { $least } min son seguros.
round-forecast-none = Aquí no se sabe cuánto lleva.
round-agreed = Acordado: de { $from } a { $until }.
round-agreed-past = Acordado para el { $day }, de { $from } a { $until }. Ese día pasó: acordar otra hora.
round-late = No se puede cumplir: acordado hasta las { $until }, llegada no antes de las { $arrive }. Llamar al dueño.
round-way-how = Los caminos son líneas rectas por { $detour } a { $speed } km/h (práctica común, sin fuente): sirven para un orden, no para una llegada al minuto.
round-finding = Sigue abierto desde { $date }: { $text }
round-sees-history = Equipo { $letter }: lo que dicen las visitas pasadas

## La lista de carga

load-title = Lista de carga
load-of-day = { $day }: { $count } visitas
load-nothing = No hay nada pendiente, así que no hay nada que cargar.
load-van = Ácidos, hipoclorito y álcalis nunca uno junto a otro
    .text = Cada uno en su bandeja, de pie y cerrado, lejos de los otros y de los alimentos. Ácido sobre productos de cloro da un gas que mata. Mandan la etiqueta y las normas locales de transporte.
load-acids = Ácidos: en su bandeja
load-hypochlorites = Hipoclorito: en su bandeja, lejos de los ácidos
load-alkalis = Álcalis: en su bandeja, lejos de los ácidos
load-neutrals = Limpiadores neutros y otros
load-what = Qué
load-take = Llevar
load-mixes = Piden las mezclas
load-for = Para
load-all = todas
load-count = Cuántos
load-sure-maybe = { $sure } + { $maybe } si hace falta
load-maybe = { $maybe } si hace falta
load-margin = Químicos: { $percent } % más de lo que piden las mezclas (práctica común, sin fuente), hacia arriba. Las cantidades son las de las mezclas habituales; manda la etiqueta.
load-if-needed = «Si hace falta»: depende de una pregunta que nadie contestó aún para el equipo, o es repuesto.
load-parts = Piezas
load-gear = Equipo y herramientas
load-instruments = Instrumentos
load-spill-kit = Kit para derrames de ácido
load-eyewash = Frasco lavaojos
load-no-pack = El procedimiento de { $site } no se conoce aquí ({ $pack }). No se anota nada para esa visita.
load-none = ninguno

## Lo usado

menu-used = Lo usado
used-title = Lo usado
used-text = Calculado de mezclas, pasos y reloj. Corregir lo que fue distinto; ambos quedan en el registro.
used-time = Tiempo en el lugar
used-worked = Calculado: { $amount }
used-corrected = Corregido: { $amount }
used-what = Qué
used-amount = Cantidad
used-nothing = El procedimiento no nombra químicos ni piezas.
used-sealed = El registro está sellado. Lo usado está en él.

## Historial

menu-history = Historial
history-none = Aquí no se conocen visitas pasadas de este equipo.
history-findings = Hallazgos abiertos
history-finding = { $date } · { $severity }: { $text }
history-no-findings = No hay hallazgos abiertos de visitas pasadas.
history-readings = Lecturas a través de los años
history-trends = Adónde van
history-reading = Lectura
history-trend = Por año
history-means = Lo que dice
history-per-year = { $slope } por año ({ $least } a { $most })
history-rises = Sube, más allá de la dispersión.
history-falls = Baja, más allá de la dispersión.
history-no-trend = Ninguna tendencia que se pueda afirmar.
history-too-few = Muy pocas visitas para una tendencia: { $count } de { $least }.
history-method = El medio de las pendientes entre todos los pares de años (Theil y Sen), con su rango del 95 %. No dice nada del error de los instrumentos ni de la causa.
history-descale = Próxima descalcificación: hacia { $on }, por las lecturas de { $from } (de { $least } a { $most } meses desde entonces).
history-descale-none = No se puede decir cuándo descalcificar: no se midieron agua y uso.
history-chart = { $reading }: a través de los años
