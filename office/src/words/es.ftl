# Palabras de las páginas de la oficina. Las del oficio vienen del núcleo y de los procedimientos.

office-office = Oficina
office-skip = Ir al contenido
office-tools = Idioma y sesión
office-leave = Salir
office-visits = Visitas

## Entrar

office-sign-in = Entre
    .do = Abra el enlace que la oficina mostró al arrancar. Sirve una vez. Ejecute «coilside office --new-link» para obtener otro.
office-link-used = Este enlace ya no sirve
    .do = Un enlace sirve una vez y durante una semana. Ejecute «coilside office --new-link» para obtener otro.
office-left = Ha salido
    .do = Ejecute «coilside office --new-link» para obtener una nueva entrada.
office-missing = Esta página no existe
    .do = Vuelva a las visitas y busque desde allí.
office-later = La oficina no puede mostrar esto ahora mismo
    .do = No se ha perdido nada. Inténtelo de nuevo en medio minuto.
office-no-summary = Aquí no hay ningún resumen
    .do = Compruebe que la dirección está completa. Si lo está, llame a la empresa que se la envió.

## La lista

office-found = { $n } en total
office-filters = Mostrar
office-show-all = Todas
office-show-waiting = Fotografías en camino
office-show-trouble = Hay que mirarlas
office-state-in-work = En curso
office-state-unsigned = Espera la firma
office-state-complete = Completa
office-state-incomplete = Incompleta
office-state-broken-off = Interrumpida
office-search = Buscar
office-search-hint = Lugar, dirección, equipo, número de serie o técnico
office-search-do = Buscar
office-search-clear = Borrar
office-column-date = Fecha
office-column-site = Lugar y equipo
office-column-technician = Técnico
office-column-state = Estado
office-column-missing = Falta
office-column-photographs = Fotografías
office-no-site = Lugar desconocido
office-look = Hay que mirarla
office-photos-of = { $here } de { $all }
office-pages = Páginas
office-page-before = Anterior
office-page-next = Siguiente
office-page-of = Página { $page } de { $pages }
office-none = Nada coincide
    .do = Busque menos palabras o muestre todas las visitas.
office-none-yet = Aún no hay visitas
    .do = Aparecen aquí en cuanto un dispositivo envía su primer evento.

## Una visita

office-day-label = Día
office-time = Hora
office-address = Dirección
office-owner = Propietario
office-reason = Motivo
office-check = El registro
office-chain-holds = Cadena verificada
    .text = Eventos: { $n }. Cada uno sigue al anterior.
office-chain-breaks = La cadena se rompe en el evento { $at }
    .text = Desde el evento { $at } no se puede garantizar nada. { $why }
office-seal-none = Sin sellar
    .text = El trabajo sigue, o el sello está todavía en camino.
office-seal-awaited = El registro está cerrado. El dispositivo aún no ha enviado su firma.
office-seal-holds = Sello verificado
    .text = Firmado por el dispositivo de { $name }, clave { $key }. Recibido { $when }.
office-seal-fails = El sello no es válido
    .text = No se fíe de este registro: { $why }.
office-seal-later = Eventos después del sello
    .text = { $n } llegaron después del sello y no están bajo él.
office-photos-here = Las fotografías están aquí
office-photos-waiting = Hay fotografías en camino
office-branches = Se guardan eventos contradictorios
    .text = { $n } difieren de la cadena. Pregunte al técnico cuáles son los correctos. No se ha perdido nada.
office-pack-pinned = Procedimiento
    .text = { $pack } { $version }, exactamente el que se usó.
office-pack-other = Otra versión del procedimiento
    .text = La visita usó otra versión de { $pack } que la { $version }. Lo que falta puede diferir.
office-pack-none = Aquí no se conoce el procedimiento
    .text = Esta oficina no tiene palabras para { $pack }. El registro se muestra como se escribió.
office-summary = El resumen del propietario
office-summary-open = Abrir el resumen
office-summary-hint = Envíe su dirección al propietario. Se abre sin contraseña y no muestra dirección, posición ni fotografías originales.
office-summary-none = Se hace en cuanto llega el sello.
office-missing-title = Qué falta y por qué
office-missing-later = La visita aún no está sellada. Lo que falta se ve al sellar.
office-missing-so-far = Aún no está
office-because = Motivo: { $reason }
office-no-reason = No se dio ningún motivo.
office-gap-step-open = Sin hacer: { $name }
office-gap-step-skipped = Omitido: { $name }
office-gap-shot = Sin fotografía: { $name }
office-gap-reading = Sin lectura: { $name }
office-gap-setting = Ajuste sin devolver: { $name }
office-findings = Hallazgos
office-finding-since = pendiente desde { $date }
office-happened = Ocurrió pese al rechazo
office-settings = Ajustes cambiados para el trabajo
office-setting = Ajuste
office-setting-home = Como estaba
office-setting-away = Para el trabajo
office-setting-now = Ahora
office-setting-open = Aún cambiado
office-setting-back = Devuelto
office-setting-left = Se deja cambiado
office-setting-differs = Repuesto, muestra otra cosa
office-work = El trabajo en orden ({ $n })
office-mark-running = En marcha
office-mark-done = Hecho
office-mark-late = Después del máximo
office-mark-skipped = Omitido

## Fotografías

office-before-after = Antes y después
office-before = Antes
office-after = Después
office-no-photo = Sin fotografía
office-photo-waits = En camino desde el dispositivo
office-photo-ahead = Imagen pequeña, enviada por delante. La fotografía misma está en camino.
office-other-photos = Otras fotografías
office-unplaced = Sin asignar
office-original = Original
office-from-site = a { $distance } del lugar (± { $doubt } m)
office-no-place = posición desconocida
office-camera-time = La cámara dice { $time }.

## Lecturas

office-readings = Lecturas
office-other-readings = Otras lecturas
office-reading = Lectura
office-value = Valor
office-change = Cambio
office-instrument = Instrumento
office-unusual = inusual, confirmado
office-corrected = tomada { $n } veces
office-calibration-lapsed = calibración terminada el { $until }

## El resumen del propietario

office-summary-pdf = Resumen en PDF, para imprimir
office-summary-keep = La página como archivo, para guardar

## Mezclas y notas

office-mixes = Mezclas
office-mix = Mezcla
office-water = Agua
office-concentrate = Concentrado
office-note = Nota

## El día y lo usado

office-calendar = Vencimientos para un calendario
office-calendar-due = Vence el servicio: { $site }, unidad { $unit }
office-calendar-cover = Acaba la cobertura: { $site }, unidad { $unit }
office-round = El día
office-round-nobody = Aquí no se sabe quién lo hace
office-round-days = Días
office-round-day-before = ← El día anterior
office-round-day-after = El día siguiente →
office-used-csv = Descargar como CSV
office-used-of-days = Lo usado en las visitas
office-used-from = Desde
office-used-to = Hasta
office-record-file = Registro como archivo
    .hint = Todo lo de esta visita en un ZIP, con un LÉAME que dice cómo comprobarlo sin esta oficina. Sus fotografías pueden decir el lugar exacto.

office-customer-waits = El nombre y la firma están en camino
office-customer-altered = El archivo con el nombre y la firma del cliente no es el que nombra el registro, o no se puede leer. No se fíe de él.
office-customer-matches = El archivo es el que nombra el registro sellado.
office-customer-erase = Borrar el nombre y la firma
    .hint = Desaparecen de esta oficina para siempre, y no estarán en ningún registro ni resumen que se haga desde ahora. El registro sellado vale sin ellos y dice que se han retenido. Los archivos entregados antes no se alcanzan.
## Dispositivos

office-ways = Páginas de la oficina
office-devices = Dispositivos
office-device = Dispositivo
office-devices-none = Aún no hay dispositivos
    .do = Dé paso a un dispositivo. Entonces aparecen aquí sus visitas.
office-device-itself = Se llama
office-device-joined = Unido
office-device-heard = Última señal
office-device-never = Aún ninguna
office-device-clock = Su reloj
office-device-coming = En camino
office-device-nothing-coming = Nada que se sepa
office-device-photos-coming = Fotografías: { $n }
office-device-revoked = Revocado
    .hint = Puede unirse otra vez con un código nuevo.
office-device-no-key = Aún sin clave
office-just-now = Ahora mismo
office-minutes-ago = Hace { $n } min
office-hours-ago = Hace { $n } h
office-days-ago = Hace { $n } días
office-clock-unknown = No se sabe
office-clock-right = En hora
office-clock-behind = Atrasado { $time }
office-clock-ahead = Adelantado { $time }
office-seconds = { $s } s
office-minutes-seconds = { $large } min { $small } s
office-hours-minutes = { $large } h { $small } min
office-days-hours = { $large } d { $small } h
office-clock-was-off = El reloj del dispositivo iba mal
office-clock-was-behind = Atrasado { $time }. Junto a las horas anotadas están las del reloj de la oficina.
office-clock-was-ahead = Adelantado { $time }. Junto a las horas anotadas están las del reloj de la oficina.
office-time-right = (oficina { $time })
office-join = Dar paso a un dispositivo
office-join-whose = ¿De quién es el dispositivo?
office-join-name = Falta un nombre
    .do = Vuelva atrás y escriba de quién es el dispositivo, con un máximo de 80 caracteres.
office-join-title = Un dispositivo para { $name }
office-join-scan = En el dispositivo: abra Coilside, elija unirse a una oficina y escanee esto.
office-join-qr = Código para escanear: el enlace que está al lado
office-join-type = O escriba el código
office-join-at = o el enlace entero
office-join-minutes = minutos quedan, de diez
office-join-once = El código sirve una vez. Solo se muestra aquí: para ver otro, dé paso otra vez a un dispositivo.
office-join-open = Ábralo en Coilside
    .do = En el dispositivo: abra Coilside, elija unirse a una oficina y escanee otra vez el código o escríbalo. Un navegador no puede hacerlo.
office-revoke = Revocar
office-revoke-title = ¿Revocar el dispositivo de { $name }?
office-revoke-means = La oficina no tomará nada más de él ni le dirá nada más.
office-revoke-keeps = No se pierde nada: lo que llegó queda aquí, lo que no ha llegado queda en el dispositivo. Puede unirse otra vez con un código nuevo.
office-leave-as-it-is = Dejarlo como está

## Revisar una visita

office-review = Revisión en la oficina
office-review-none = Nadie ha dicho nada sobre ella todavía.
office-review-accept = Marcar como revisada
office-review-accepted = Revisada
office-review-question = Pregunta
office-review-ask = Preguntar al técnico
office-review-send = Enviar la pregunta
office-review-hint = Va al dispositivo que envió la visita.
office-review-words = La pregunta no tiene palabras, o tiene demasiadas
    .do = Vuelva atrás y escríbala con un máximo de 2000 caracteres.
office-take-over = Que otro dispositivo siga con esta visita
office-take-over-back = La visita
office-take-over-now = El dispositivo de { $name } escribe ahora esta visita.
office-take-over-means = A partir de ahora la escribe el otro dispositivo: recibe todo lo que ha llegado aquí y sigue desde ahí.
office-take-over-keeps = Lo que el primer dispositivo aún tiene de ella no se pierde. Cuando llegue, se guarda junto al registro para revisarlo.
office-take-over-who = ¿Qué dispositivo sigue?
office-take-over-do = Que siga
office-take-over-nobody = Ningún otro dispositivo puede: antes tiene que unirse uno.
office-take-over-sealed = La visita está sellada
    .do = Nadie sigue con una visita sellada. Planifique otra.
office-handed = de { $from } a { $to }
office-beside = Guardado junto al registro
office-beside-why = Estos sucesos no forman parte del registro. Compárelos con él y pregunte al técnico cuáles son correctos.
office-beside-from = Del dispositivo de { $name } ({ $n })
office-beside-number = Número
office-beside-what = Lo que dice
office-beside-sealed = El dispositivo de { $name } selló su propia versión, de { $n } sucesos. Ese sello también se guarda.
