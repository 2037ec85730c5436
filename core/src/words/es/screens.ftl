# Las palabras de las pantallas. Frases cortas, en infinitivo o imperativo, sin culpar.

## Menú y marco

menu-round = Ronda
menu-now = Ahora
menu-phases = Fases
menu-photographs = Fotografías
menu-readings = Lecturas
menu-findings = Hallazgos
menu-leaving = Salida
menu-emergency = Emergencia
menu-break-off = Interrumpir
menu-outbox = Por enviar
menu-procedures = Procedimientos
menu-settings = Ajustes
menu-unit = Equipo { $letter }
back = Volver
back-to-now = Volver al trabajo
back-to-round = Volver a la ronda
progress = { $done } de { $total }
not-yet = todavía no
fact-not-known = no se sabe: mirar otra vez

## Ronda

round-under-way = En curso
round-due = Pendientes
round-done = Selladas
round-nothing-due = No hay nada pendiente. Las visitas nuevas llegan de la oficina cuando hay cobertura.
round-go-on = Continuar: { $site }
round-start = Empezar la visita: { $site }
round-owner = { $name } · { $phone }
round-unit = Equipo { $letter }: { $maker } { $model }, serie { $serial }
round-due-on = Vence { $day } · { $reason }
round-line-safe = { $site } · { $when } · en la oficina
round-line-waiting = { $site } · { $when } · espera el envío
round-line-elsewhere = { $site } · { $when } · continúa otro dispositivo
round-coming = Llega una visita de otro dispositivo: aquí hay { $have } de { $next } entradas.
round-coming-procedure = Aquí hay una visita de otro dispositivo que espera de la oficina su procedimiento o su encargo.

## Por enviar

outbox-label = Por enviar
outbox-empty = todo está en la oficina
outbox-waiting = en espera
outbox-waiting-photos = fotografías en espera: { $photos }
outbox-stuck = detenido: mirar aquí
outbox-all-safe = Todo está a salvo en la oficina.
outbox-much = En espera desde { $since }: { $what }
outbox-kept = Se guardan en este dispositivo y salen solas cuando hay cobertura.

## Procedimientos

procedures-kept = Una visita empezada conserva el procedimiento con que empezó.
procedures-in-use = Procedimientos en uso
procedures-column-name = Nombre
procedures-column-version = Versión
procedures-column-from = De dónde
procedures-built-in = este programa
procedures-from = Leído de { $from }
procedures-refused = Rechazados
procedures-more = Y { $count } más.
procedures-read = Leer otra vez
procedures-were-read = Leído. En uso: { $good }. Rechazados: { $refused }.
procedures-no-folder = Este programa empezó sin una carpeta de procedimientos.
procedures-not-here = El procedimiento «{ $pack }» no está en este dispositivo.
    .do = Ponerlo en la carpeta de procedimientos, o pedir a la oficina un programa que lo tenga. Entonces empieza la visita.

## Ajustes

settings-language = Idioma
settings-units = Unidades
language-en = English
language-es = Español
units-metric = Métricas: °C, L, kPa
units-us = De EE. UU.: °F, gal, psi

## Ahora

now-all-done = Todos los pasos están hechos
now-all-done-text = Revise lo que queda abierto y selle el registro.
now-to-leaving = Ir a la salida
undo = Deshacer: { $step }
foot-start = Empezar: { $step }
foot-done = Hecho: { $step }
foot-skip = Omitir este paso
check-done = Hecho
state-open = por hacer
state-gated = todavía no
state-running = en curso
state-done = hecho a las { $clock }
state-done-late = hecho a las { $clock }, después del máximo
state-happened = ocurrió a las { $clock }: { $words }
state-skipped = omitido: { $reason }

## Tiempos de espera

dwell-waiting = Espere al menos { $least } y como máximo { $most }.
dwell-running = Faltan { $left }
dwell-ready = Ya es la hora. Continúe.
dwell-soon-over = Siga ya: faltan { $left } para el tiempo máximo.
dwell-over = Pasó el máximo. Continúe enseguida.
wake-ready = Ya es la hora: { $step }
wake-soon-over = Quedan dos minutos: { $step }

## Campos

could-not-measure = No se pudo medir
confirm-unusual = Sí, es así
before-value = La última vez { $value } ({ $date })
taken-value = Anotado: { $value }
missed-value = Sin tomar: { $reason }
instrument-lapsed = { $name } ({ $serial }): su calibración terminó el { $until }. Puede seguir midiendo con él; el registro lo dice.
problem-empty = Escriba un número.
problem-not-a-number = «{ $typed }» no es un número. Use cifras, con coma o punto.
problem-ambiguous = «{ $typed }» puede leerse de dos maneras. Escríbalo sin el separador.
problem-impossible = No puede ser. Escriba un valor de { $least } a { $most }.
problem-words = Escriba unas palabras.
problem-ink-unreadable = El dibujo no se puede leer. Bórrelo y dibuje de nuevo.
problem-ink-nothing = Aún no hay nada dibujado. Dibuje, o siga sin firma.
problem-ink-outside = El dibujo no cabe en su recuadro. Bórrelo y dibuje de nuevo.
problem-ink-too-much = Es demasiado dibujo. Bórrelo y dibuje menos.
problem-ink-name = El nombre es demasiado largo. Escriba como mucho 120 letras.
problem-read-back = Muestra { $shows }; antes del trabajo era { $home }. Vuelva a ponerlo y lea otra vez, o diga abajo por qué está bien así. Si debe quedar cambiado, dígalo allí.
problem-choose = Elija una opción.
confirm-other-unit = Dejarlo: es esta unidad
question-other-unit = La placa dice { $read }; el registro, { $register }. ¿Es la unidad correcta? Si no lo es, no empiece: pregunte a la oficina.
question-from-photo = Leído de la fotografía: { $read }. Compárelo con la placa.
confirm-from-photo = Tomarlo: es lo que dice la placa
question-unusual = Casi siempre está entre { $from } y { $to }. ¿Es así?

## Fotografías

shot-take = Tomar la fotografía
shot-take-another = Tomar otra
shot-could-not = No se pudo fotografiar
shot-unplaced = Otra cosa
    .show = Todo lo que valga la pena guardar. La oficina puede ubicarlo después.
photo-caption = { $title }, { $when }
photo-code-read = Código leído: { $text } ({ $kind })
photo-refused = Este archivo no se aceptó. Se guarda aparte.
photo-empty = El archivo está vacío. Tome la fotografía otra vez.
photo-too-long = El archivo pasa de 60 MB. Elija un ajuste menor y tómela otra vez.
photo-too-large = La imagen pasa de 100 megapíxeles. Elija un ajuste menor y tómela otra vez.
photo-not-a-picture = El archivo no es una imagen. Elija una fotografía JPEG, PNG o WebP.
photo-damaged = La imagen está cortada o dañada. Tómela otra vez.
photo-after-seal = El registro está sellado. La fotografía se guarda y se envía aparte.
flag-time-differs = El reloj de la cámara difiere del de este dispositivo en más de diez minutos.
flag-no-time = La imagen no lleva hora propia.
flag-place-differs = El lugar de la cámara difiere del de este dispositivo.
flag-same-as-other = La misma imagen está en otro lugar de esta visita.
flag-no-preview = Se guarda tal cual. No todos los dispositivos pueden mostrarla.
flag-blurred = Movida, o no se ve nada claro en ella. Tome otra si puede.
flag-dark = Demasiado oscura. Tome otra con más luz si puede.
flag-blown-out = Gran parte está quemada. Tome otra con menos luz de frente si puede.
flag-same-as-before = Muestra lo mismo que la fotografía de antes del trabajo.
flag-looks-like-other = Se ve igual que otra fotografía de esta visita.
flag-clock-set-back = El reloj de este dispositivo se atrasó durante la visita.
flag-no-place = Ni la cámara ni este dispositivo indicaron dónde se tomó.
flag-elsewhere = Tomada en otro lugar: a { $apart } del sitio, con un margen de { $doubt }.
flag-place-unsure = No se puede decir si se tomó en el sitio: a { $apart } de él, con un margen de { $doubt }.
flag-other-serial = Su código da otro número de serie que el registro. Compruebe qué unidad es.
note-photo = { $title }: { $flag }

## Negativas

refused-step = Todavía no: { $step }
refused-sealed = El registro está sellado
    .do = Solo puede seguir un añadido.
refused-elsewhere = Otro dispositivo continúa esta visita
    .do = Continúe en el otro dispositivo. Lo de aquí se conserva. Llame a la oficina si no es así.
refused-sealing = El registro se está sellando
    .do = Cancele el sello para seguir trabajando.
refused-broken-off = La visita se interrumpió
    .do = Selle lo que hay.
refused-no-such = Eso no es posible aquí
    .do = Vuelva al trabajo y continúe desde allí.
refused-settings-away = Sin sellar: un ajuste está fuera de su valor
refused-signature-waits = No sellado: el nombre o la firma del cliente aún no se ha tomado
    .do = Tómela, bórrela, o diga que el cliente no firma.
refused-setting = Devolver a su valor: { $setting }. O decir por qué queda fuera.
refused-seal-danger = Sin sellar: no es seguro dejarlo así
happened-offer = Ya ocurrió
missing-already-done = Ya está hecho.
missing-not-for-this-unit = No corresponde a este equipo.
missing-answer = Responda primero: { $question }
missing-phase = Termine primero: { $phase }
missing-step = Haga primero: { $step }
missing-reading = Leer: { $reading }
missing-shot = Fotografiar: { $shot }
missing-loop-not-cold = El circuito no se midió a 30 °C o menos. Déjelo enfriar y mida otra vez.
missing-fitting-not-cold = La conexión no se midió a 30 °C o menos. Déjela enfriar y mida otra vez.
missing-rinse-not-measured = Mida el enjuague y el suministro con el mismo instrumento, pH o conductividad.
missing-rinse-differs = El enjuague todavía no iguala al suministro. Siga enjuagando y mida otra vez.
missing-not-started = Empiece primero el tiempo de espera.
missing-wait = Espere { $left } más.
missing-setting-not-noted = Anote cómo estaba y cómo está ahora: { $setting }
missing-setting-away = Devolver a su valor: { $setting }
missing-other-unit = Equipo { $letter }, que comparte esto: { $danger }
missing-acid-unknown = No se sabe qué ácido es, o con qué metal se encuentra. Lea la etiqueta y la placa del intercambiador. Hasta saber ambos, enjuague solo con agua.
pause-title = Estuvo fuera un rato
pause-text = Alguien pudo haber estado aquí. Mire cada cosa otra vez antes de continuar.
pause-still = { $fact }: sigue { $state }
shared-title = El trabajo en otro equipo cambió lo que este comparte
shared-text = Mire cada cosa otra vez antes de seguir aquí.
shared-elsewhere = El equipo { $letter } comparte lo que cambió aquí. Mire allí otra vez:
strip-other-unit = Equipo { $letter }: { $what }

## Ajustes del control

excursion-home-label = { $setting }: como estaba, con su unidad
excursion-away-label = { $setting }: como está para el trabajo, con su unidad
excursion-because-label = { $setting }: por qué, si no es lo de siempre
excursion-open = Anotar el cambio
excursion-noted = { $setting }: { $home } → { $away }
excursion-bring-home = { $setting }: devolver a { $home }.
excursion-back-label = Lo que muestra el control ahora
excursion-differs-label = Muestra otra cosa que antes: ¿por qué está bien así?
excursion-is-home = Ya está de vuelta
excursion-leave = Tiene que quedar fuera
excursion-home-now = { $setting }: de vuelta, muestra { $shows }
excursion-home-differs = { $setting }: era { $home }, ahora muestra { $shows }. Motivo: { $reason }
excursion-left = { $setting } queda fuera de su valor: { $reason }
excursion-away = { $away }, devolver a { $home }

## Pantallas que preguntan

ask-why = ¿Por qué no se pudo?
    .how = Dígalo en pocas palabras. Quedan en el registro.
    .label = Motivo
    .do = Anotar el motivo
ask-skip = ¿Omitir este paso?
    .how = Diga por qué. El paso cuenta como faltante, con su motivo.
    .label = Motivo
    .do = Omitirlo
ask-happened = Ya ocurrió
    .how = Anote la verdad. Queda marcado en el registro, y la pantalla siguiente dice cómo dejarlo seguro.
    .label = Qué ocurrió
    .do = Mantener para anotar que ocurrió
ask-left = El ajuste queda fuera de su valor
    .how = Diga por qué y avise al propietario. Aparece en su resumen.
    .label = Motivo
    .do = Anotar que queda fuera
ask-break-off = Interrumpir aquí
    .how = Primero déjelo seguro, fotografíe cómo queda y cuelgue la etiqueta. Lo que hay se sella como incompleto.
    .label = Motivo
    .do = Mantener para interrumpir
make-safe-acid = Vacíe el ácido, neutralícelo, enjuague. Deje las válvulas cerradas hasta comprobar el enjuague. Si no puede quedarse: cerrar, etiquetar, avisar al propietario y llamar a la oficina.
make-safe-pump = Pare la bomba de servicio y desenchúfela.
make-safe-covers = Ponga las tapas o cierre el paso al equipo.
make-safe-tag = Deje el seccionador bloqueado y etiquetado.
make-safe-settings = Devuelva los ajustes o escriba en la etiqueta cuáles quedan fuera.
make-safe-owner = Diga al propietario cómo lo deja y a quién llamar.

## Lecturas y resultados

readings-before-after = Antes y después
readings-others = Otras lecturas
column-reading = Lectura
column-found = Antes
column-left = Después
column-value = Valor
column-what = Qué
column-is = Está

result-title = Qué dicen las lecturas
result-not-yet = Tome primero las lecturas de agua, caudal y potencia. Después se ve aquí qué dicen.
result-value = { $value }{"\u00A0"}±{"\u00A0"}{ $doubt }
result-staged = { $stage }: { $value }
result-last-found = La última vez, al llegar: { $value } ({ $date })
result-last-left = La última vez, al salir: { $value } ({ $date })
result-before-after = Antes y después
result-doubt = ± es la duda de los instrumentos, con un nivel de cerca del 95 %.
result-to-details = Detalles
result-to-all = Ver todos los resultados
result-notice-found = Cómo se encontró
result-notice-left = Cómo queda
result-line = { $name }: { $value }. { $more }

result-heat = Calor al agua
    .alone = Compárelo con la placa a igual aire y agua. Muy por debajo: mire el serpentín, el ventilador, el caudal y la cal.
    .more = Más calor que antes en iguales condiciones de aire y agua, por encima de la duda.
    .less = Menos calor que antes en iguales condiciones de aire y agua, por encima de la duda. Mire otra vez antes de irse.
    .apart = El aire o el agua eran demasiado distintos antes, o no se leyeron: no se puede comparar el antes con el después.
    .none = Sin diferencia de calor que se pueda afirmar en iguales condiciones de aire y agua.
result-cop = Coeficiente de rendimiento
    .alone = Calor por cada vatio consumido. Más bajo que la última vez a igual aire y agua: limpie y busque la causa.
    .more = Más calor por cada vatio que antes en iguales condiciones de aire y agua, por encima de la duda.
    .less = Menos calor por cada vatio que antes en iguales condiciones de aire y agua, por encima de la duda. Mire otra vez antes de irse.
    .apart = El aire o el agua eran demasiado distintos antes, o no se leyeron: no se puede comparar el antes con el después.
    .none = Sin diferencia en el calor por cada vatio que se pueda afirmar en iguales condiciones de aire y agua.
result-water-rise = Subida de temperatura del agua
    .alone = Mucha subida con poco caudal: busque cal, aire o una válvula medio cerrada. Poca subida con buen caudal: mire el lado del aire.
    .more = El agua se calienta más a su paso que antes.
    .less = El agua se calienta menos a su paso que antes. Con más caudal no es pérdida: guíese por el calor.
    .none = Sin diferencia en la subida que se pueda afirmar.
result-air-drop = Bajada de temperatura del aire
    .alone = Mucha bajada con poco aire: mire si el serpentín está sucio y el ventilador. Poca bajada: se toma poco calor.
    .more = El aire se enfría más que antes. Con el mismo caudal de aire, el serpentín toma más calor.
    .less = El aire se enfría menos que antes. También lo hace el mayor paso de aire por un serpentín limpio: guíese por el calor.
    .none = Sin diferencia en la bajada que se pueda afirmar.
result-superheat = Recalentamiento del gas de aspiración
    .alone = Lo usual es de 5 a 10 K. Mucho: poco refrigerante o una válvula que alimenta poco. Cerca de cero: puede llegar líquido al compresor. Primero valen las cifras del fabricante.
    .more = Más recalentamiento que antes. Primero valen las cifras del fabricante.
    .less = Menos recalentamiento que antes. Puede deberse a un serpentín más limpio. Primero valen las cifras del fabricante.
    .none = Sin diferencia en el recalentamiento que se pueda afirmar. Primero valen las cifras del fabricante.
result-subcooling = Subenfriamiento del líquido
    .alone = Lo usual es de 3 a 8 K. Poco: poco refrigerante. Mucho: demasiado, o líquido retenido. Primero valen las cifras del fabricante.
    .more = Más subenfriamiento que antes. Primero valen las cifras del fabricante.
    .less = Menos subenfriamiento que antes. Primero valen las cifras del fabricante.
    .none = Sin diferencia en el subenfriamiento que se pueda afirmar. Primero valen las cifras del fabricante.
result-gas-cooler-pressure = Presión en el enfriador de gas, absoluta
    .alone = Por encima del punto crítico nada condensa: no hay subenfriamiento. El control fija esta presión. Primero valen las cifras del fabricante.
    .more = Más presión que antes. Sigue al agua y al control. Primero valen las cifras del fabricante.
    .less = Menos presión que antes. Sigue al agua y al control. Primero valen las cifras del fabricante.
    .none = Sin diferencia en la presión que se pueda afirmar.
result-gas-cooler-approach = Acercamiento del enfriador de gas
    .alone = Cuánto más caliente sale el gas que el agua que entra. Mucho: busque cal y poco caudal. Primero valen las cifras del fabricante.
    .more = El gas sale más caliente sobre el agua que antes: busque cal y poco caudal.
    .less = El gas sale más cerca del agua que antes, como tras desincrustar.
    .none = Sin diferencia en el acercamiento que se pueda afirmar.
result-cycle = El ciclo del refrigerante
result-cycle-caption = { $refrigerant }: presión sobre entalpía
result-cycle-dome = Donde conviven líquido y vapor
result-cycle-enthalpy = Entalpía, { $unit }
result-cycle-pressure = Presión absoluta, { $unit }
result-cycle-stage = { $stage }: lado de baja { $low }, lado de alta { $high }, recalentamiento { $superheat }, subenfriamiento { $subcooling }.
result-cycle-cop = Solo del refrigerante, el esquema da un COP de unos { $cop }, sin ventilador, bomba ni pérdidas.
result-cycle-means = Un esquema de las lecturas: sin pérdidas de presión, y con presiones absolutas. Primero valen las cifras del fabricante. Solo la persona certificada abre el circuito.
result-insulation = Aislamiento a tierra, según se midió
    .pass = Por encima del mínimo de { $beside }. Primero vale la cifra del fabricante.
    .fail = Por debajo del mínimo de { $beside }. Puede deberse a refrigerante en el aceite. La persona autorizada decide antes de dar tensión.
    .close = Demasiado cerca del mínimo de { $beside } para decidir. Mida otra vez. Primero vale la cifra del fabricante.
result-insulation-40 = Aislamiento a tierra, a 40 °C
    .alone = Para comparar año a año, con la regla de la mitad por cada 10 K. Si baja una y otra vez, hay humedad o envejecimiento.
result-capacitor = Condensador de marcha
    .pass = Dentro del 10 % de su etiqueta, { $beside }.
    .fail = A más del 10 % de su etiqueta, { $beside }. Anótelo como hallazgo; uno nuevo lleva la misma etiqueta.
    .close = Demasiado cerca del 10 % de su etiqueta, { $beside }, para decidir. Mida otra vez.
result-scaling = Índice de incrustación del agua de la red (Langelier)
    .pass = Bajo cero: esta agua deja poca cal. Con los años puede atacar el metal.
    .fail = Sobre cero: esta agua deja cal donde se calienta. Prevea desincrustar más a menudo.
    .close = Cerca de cero: puede ir hacia un lado u otro. Guíese por la cal que encuentre.

result-year = Electricidad para agua caliente en un año
    .less = Antes { $found }, después { $left }: { $saved } menos. Según el consumo que dijo el propietario, como si cada día fuera como hoy.
    .more = Antes { $found }, después { $left }: { $saved } más. Según el consumo que dijo el propietario, como si cada día fuera como hoy.
descale-title = Cuándo desincrustar otra vez: consejo
descale-advice = Dentro de unos { $months } meses. La duda va de { $least } a { $most }.
descale-water-scales = Se cuenta como agua que deja incrustación donde se calienta.
descale-water-does-not-scale = Se cuenta como agua que no deja incrustación donde se calienta.
descale-held-at-shortest = El agua pide menos que eso. Tratar el agua, o calentarla menos.
descale-held-at-longest = No esperar más: el agua y el uso cambian.
descale-first = El intervalo y las condiciones del fabricante van primero.

## Detalles de los resultados

details-title = Detalles
details-back = Volver a los resultados
details-results = Resultados
details-readings = Lecturas en que se apoyan
details-result = Resultado
details-difference = Diferencia
details-verdict = Veredicto
details-instrument = Instrumento
details-limits = Límites
details-doubt = ±: incertidumbre expandida, k = 2, según JCGM 100. Los límites de los instrumentos cuentan como rectangulares.
details-shared = Un instrumento en un mismo lugar comparte casi todo su error entre antes y después (correlación 0,8; práctica común, sin fuente). Entre dos lugares no se da nada por compartido.
details-conditions = Diferencias de calor y de coeficiente de rendimiento: lo encontrado se lleva con un modelo al aire y al agua de la salida, con la duda del modelo; como para un compresor de una velocidad, con la humedad tomada como 60 ± 30 % las dos veces.
details-rules = Veredictos según JCGM 106: cumple o no cumple solo donde toda la duda queda a un lado del límite. Un cambio solo donde es mayor que su duda.
verdict-pass = cumple
verdict-fail = no cumple
verdict-close = demasiado cerca para decidir
verdict-more = más
verdict-less = menos
verdict-none = sin diferencia que se pueda afirmar

## Hallazgos

severity-note = Para saber
severity-soon = Arreglar pronto
severity-unsafe = Inseguro
severity-label = ¿Cuánto importa?
finding-new = Un hallazgo nuevo
finding-label = ¿Qué encontró?
finding-add = Añadir el hallazgo
finding-mended-label = ¿Arreglado? Qué se hizo
finding-mend = Está arreglado
finding-since = { $text } (pendiente desde { $date })
finding-mended = Arreglado: { $words }

## Salida

leaving-state = Cómo deja el equipo: compare con lo que ve
leaving-missing = Falta en el registro
leaving-complete = No falta nada.
leaving-notes = Notas en el registro
leaving-mend = Ir allí
leaving-broken-off = Interrumpida: { $reason }
gap-because = { $gap } Motivo: { $reason }
gap-step-open = Sin hacer: { $step }
gap-step-skipped = Omitido: { $step }.
note-lapsed = Medido con { $name } ({ $serial }): su calibración terminó el { $until }.
note-mix = { $mix }: { $note }
seal-hold = Mantener para sellar el registro
sealing-text = El registro está congelado y espera la firma de este dispositivo.
sealing-again = Firmar ahora
sealing-cancel = Seguir trabajando
sealed-title = El registro está sellado
sealed-text = Ya nada puede cambiarse sin que se note.
sealed-safe = Todo está a salvo en la oficina.
sealed-waiting = Se guarda en este dispositivo y va solo a la oficina cuando hay cobertura.
sealed-complete = Está completo.
sealed-incomplete = Dice qué falta y por qué.
customer-title = El cliente
customer-question = ¿Está el cliente?
customer-present = El cliente está
customer-absent = El cliente no está
customer-absent-text = Queda así en el registro. Nada falta por eso.
customer-show = Muestre o lea esto al cliente.
customer-shown-first = Antes que nada
customer-shown-found = Lo que se encontró
customer-shown-done = Lo que se hizo
customer-shown-gaps = Lo que no se hizo
customer-statement = La firma dice una sola cosa: «Me mostraron esto en el lugar». No es un contrato ni renuncia a ningún derecho. Nadie está obligado a firmar.
customer-name = Nombre del cliente, si quiere
customer-ink = Firma, si quiere
    .hint = Dibuje con un dedo, un lápiz o el ratón. El nombre escrito vale igual.
customer-sign = Tomar esta firma
customer-sign-name = Tomar solo el nombre escrito
customer-unsigned = El cliente no firma
customer-unsigned-text = El cliente está y no firma. Nadie está obligado, y no se pregunta por qué.
customer-sign-after-all = El cliente firma después de todo
customer-signed = Mostrado a { $name }, firmado en el lugar a las { $clock }
customer-signed-unnamed = Mostrado al cliente, firmado en el lugar a las { $clock }
customer-withheld = El nombre y la firma del cliente se borraron. El registro vale sin ellos.
addenda-title = Añadidos
addendum-line = { $clock } { $text }
addendum-unsigned = El añadido espera la firma de este dispositivo.
addendum-field = Qué se añade
addendum-add = Añadir y firmar

## Emergencia

emergency-call = Llame al número de emergencias
emergency-here = Lea esto en voz alta:
emergency-place = Latitud { $latitude }, longitud { $longitude }, con { $accuracy } m de duda.
emergency-no-place = No se conoce el lugar. Diga la dirección.
emergency-eye = Ácido o limpiador en el ojo
    .do = Enjuague enseguida con agua limpia, con los párpados abiertos, al menos 15 minutos. Quite las lentillas. Siga enjuagando de camino al médico. Lleve la etiqueta.
emergency-shock = Descarga eléctrica
    .do = Corte en el seccionador antes de tocar a la persona. Pida ayuda. Si no respira, empiece la reanimación. Vaya al médico después de cualquier descarga.
emergency-gas = Olor o alarma de gas
    .do = Sin llama, sin interruptores y sin teléfono en la zona. Saque a todos contra el viento. Ventile si es seguro. Llame desde fuera.
emergency-burn = Quemadura, ácido en la piel
    .do = Enfríe la quemadura 20 minutos con agua corriente. Quite el ácido con mucha agua y quite la ropa mojada. Pida ayuda.
emergency-acid-in-loop = Hay ácido en el circuito. Dígalo a quien venga.
emergency-clock = Son las { $clock }.

## Resumen para el propietario

summary-title = Revisamos su bomba de calor para agua caliente
summary-title-stopped = Se interrumpió el trabajo en su bomba de calor para agua caliente
summary-lead = { $site }, { $day }
summary-machine = Equipo: { $unit }
summary-before = Antes
summary-after = Después
summary-no-photo = Sin foto
summary-slide = Toque una casilla, o use las flechas del teclado, para ver menos o más de cada foto.
summary-page = Página { $page } de { $pages }
summary-section-first = Lea esto primero
summary-section-found = Lo que encontramos
summary-section-done = Lo que hicimos, y por qué importa
summary-section-pictures = Antes y después
summary-section-numbers = Lo que cambió en números
summary-section-years = A lo largo de los años
summary-section-gaps = Lo que no pudimos hacer
summary-section-settings = Ajustes que son distintos por ahora
summary-section-cover = Condiciones de la garantía
summary-section-cautions = Tenga en cuenta
summary-section-next = Lo que sigue
summary-section-shown = Mostrado en el lugar
summary-section-genuine = Cómo comprobar que esto es auténtico
summary-stopped = Tuvimos que parar antes de acabar el trabajo. Motivo: { $reason } El equipo debe quedar apagado hasta que volvamos.
summary-incomplete = No se hizo todo.
summary-evidence-missing = Fotos o medidas que faltan en el registro: { $n }. Allí consta cada una con su motivo.
summary-is-it-safe = ¿Es seguro?
summary-is-there-hot-water = ¿Hay agua caliente?
summary-whom-to-call = ¿A quién llamo?
summary-next-date = ¿Cuándo es la próxima revisión?
summary-no-contact = A la empresa que envió al técnico
summary-next-by-phone = Le llamamos para acordar un día.
summary-safe-yes = Sí. No se encontró nada inseguro.
summary-safe-no = No. No use el equipo. Lo que se encontró está arriba.
summary-safe-stopped = El trabajo se interrumpió. Deje el equipo apagado hasta que volvamos.
summary-safe-stopped-dangerous = No. El trabajo se interrumpió y no fue posible dejar el equipo seguro. No se acerque. No conecte nada. No use agua de él hasta que hayamos ido.
summary-safe-yes-mended = Sí. Lo que era peligroso está arreglado. Lea abajo lo que se encontró.
summary-safe-stopped-untagged = El trabajo se interrumpió. Nadie debe conectar el equipo hasta que hayamos ido. Está apagado y sin candado.
summary-hot-yes = Sí.
summary-hot-pending = Se está calentando de nuevo. Use el agua caliente cuando el equipo haya llegado a su temperatura.
summary-hot-no = Por ahora no, de este equipo.
summary-not-measured = Sin medir
summary-no-difference = Sin diferencia que se pueda afirmar
summary-higher = Más alto
summary-lower = Más bajo
summary-better = Mejor
summary-worse = Peor
summary-not-alike = El aire o el agua eran demasiado distintos para comparar los dos.
summary-numbers-hint = El signo ± dice cuánto puede fallar un número. Un cambio más pequeño que eso no se puede afirmar.
summary-times = { $n } veces
summary-chart-ranges = { $label }. Antes: { $found }. Después: { $left }. { $meaning }
summary-heat = Calor que recibe el agua
summary-cop = Calor por cada unidad de electricidad
summary-gain-less-power = La bomba de calor necesita ahora menos electricidad para la misma agua caliente.
summary-gain-year = Con el agua caliente que usa, son unos { $least } a { $most } kWh de electricidad menos al año.
summary-gain-year-up-to = Con el agua caliente que usa, son hasta { $most } kWh de electricidad menos al año.
summary-gain-more-power = La bomba de calor necesita más electricidad para la misma agua caliente que antes de nuestro trabajo. Llámenos: queremos saber por qué.
summary-gain-conditions = El aire o el agua eran demasiado distintos antes y después, así que no se puede afirmar si la bomba de calor necesita ahora menos electricidad.
summary-gain-none = En la electricidad para la misma agua caliente no hay diferencia que se pueda afirmar.
summary-years-rises = Ha subido con los años.
summary-years-falls = Ha bajado con los años.
summary-years-none = Sigue más o menos igual con los años.
summary-years-few = Son pocos años para saber hacia dónde va.
summary-left-out = Sin hacer: { $step }. Motivo: { $reason }
summary-not-done = Sin hacer: { $step }.
summary-mended = { $finding } Arreglado: { $words }
summary-setting-left = { $setting } queda por ahora en { $away } (estaba en { $home }). Motivo: { $reason }
summary-setting-open = { $setting } quedó en { $away } (estaba en { $home }). Lo devolveremos.
summary-caution-scald = El agua caliente puede quemar. Pruébela con la mano antes de que entren niños o personas mayores.
summary-caution-legionella = En el agua tibia pueden crecer gérmenes (legionela). No baje el agua caliente por debajo de lo ajustado. Tras unos días fuera, deje correr cada grifo con agua caliente unos minutos con la ventana abierta, y no respire el vapor.
summary-caution-flushed = El producto se enjuagó del lado del agua. Medimos que ya no quedaba antes de dejar entrar otra vez agua potable.
summary-caution-first = Primero valen la etiqueta del equipo, las instrucciones del fabricante y la persona autorizada.
summary-next-service = Próxima revisión: { $day }.
summary-next-descaling = Por el agua que tiene, conviene limpiar la cal del equipo dentro de unos { $months } meses. Lo que pide el fabricante va primero.
summary-next-between = Hasta entonces aparte hojas y nieve del equipo. Llámenos si hace ruido, gotea o el agua sigue fría.
summary-calendar = Poner el día en mi calendario
summary-calendar-title = Revisión de la bomba de calor para agua caliente
summary-mark-record = Marca del registro
summary-mark-key = Marca del aparato que lo selló
summary-genuine = Esto es una forma corta de un registro que se selló. Llame a la empresa y pida que le lean las dos marcas. Deben ser iguales que aquí.
summary-genuine-file = También puede pedir el archivo del registro. Lleva todas las fotos y dice cómo puede comprobar cualquiera que nada cambió en él.
summary-genuine-page = La copia de la empresa de esta página está aquí:
summary-shown = Mostrado a: { $name }, firmado en el lugar.
summary-shown-unnamed = Mostrado al cliente, firmado en el lugar.
summary-shown-drawing = Firma de { $name }, dibujada a mano
summary-shown-drawing-unnamed = Firma dibujada a mano
summary-hand-over = Resumen para el propietario
summary-hand-over-page = Mostrar el resumen
summary-hand-over-paper = Resumen en PDF
summary-day = { $day } de { $month } de { $year }
summary-month-of-year = { $month } de { $year }
summary-month-1 = enero
summary-month-2 = febrero
summary-month-3 = marzo
summary-month-4 = abril
summary-month-5 = mayo
summary-month-6 = junio
summary-month-7 = julio
summary-month-8 = agosto
summary-month-9 = septiembre
summary-month-10 = octubre
summary-month-11 = noviembre
summary-month-12 = diciembre

## Mezclas y materiales

mix-said-parts = la proporción
mix-said-percent = el porcentaje
mix-said-dose = la dosis por litro
mix-said-cups = las tazas por cubo
mix-label-contradicts = La etiqueta se contradice: según { $by } lleva { $amount }, según { $other } lleva { $asks }. No adivine: pregunte al fabricante, y hasta entonces tome lo más flojo.
mix-less-than-loop = Es menos de lo que llena el circuito ({ $loop }): la bomba tomaría aire.
mix-more-than-vessel = Es más de lo que cabe en el recipiente ({ $vessel }). Tome uno mayor o mezcle por partes.
acid-allowed = { $acid } en { $metal }: permitido. { $reason } La etiqueta y el fabricante del intercambiador van primero.
acid-with-limits = { $acid } en { $metal }: con límites. { $reason } La etiqueta y el fabricante del intercambiador van primero.
acid-forbidden = { $acid } en { $metal }: prohibido. { $reason } Enjuague solo con agua, o tome otro ácido según etiqueta y fabricante.
acid-reason-leaves-alone = Diluido y frío no ataca el metal.
acid-reason-chloride-pits = Su cloruro pica y agrieta el acero inoxidable.
acid-reason-dissolves = El metal se disuelve en él.
acid-reason-eats-joints = Se come las soldaduras.
acid-reason-inhibited = Solo con un inhibidor que su etiqueta nombre.
acid-reason-weak-and-short = Solo flojo, frío y poco tiempo.

charge-low = La batería del teléfono está al { $percent } %. Cárguelo antes de echar el ácido. Si se apaga, la alarma no puede avisarle.
charge-low-times = La batería del teléfono está al { $percent } %. Cárguelo primero. Si empieza ahora, escriba en el cubo: no sacar antes de las { $least }, fuera a las { $most } como muy tarde.

## What a drawing shows

view-plate = Las cuatro esquinas de la placa están en la imagen y el número de serie se puede leer.
view-face = La cara entera vista de frente, de borde a borde, sin reflejos.
view-wiring = La tapa abierta con todas las bornas, tan nítida que se siga cada cable.
view-display = La pantalla llena la imagen y sus cifras se pueden leer.
view-whole = La unidad entera de frente, con algo de lo que la rodea.
view-feet = Las dos patas con tornillos y tacos, y el suelo debajo.
view-surface = El punto de cerca y nítido, con una regla al lado.
view-hoses = Las dos conexiones, las dos mangueras y el cubo en una imagen.
view-strip = La tira junto a su escala, con luz de día, antes de que se seque.
view-lock = El seccionador con candado y la etiqueta con nombre y hora legibles.
view-part = La pieza entera sobre un fondo liso, con el lado gastado arriba.
