# Las palabras del envío: lo que espera, por qué, unirse a una oficina, lo que dice la oficina.

## Por enviar

outbox-last-answer = La oficina respondió por última vez: { $clock }.
outbox-no-answer = La oficina no ha respondido desde que empezó este programa.
outbox-last-safe = A salvo en la oficina por última vez: { $clock }.
outbox-never-safe = Nada de aquí está aún a salvo en una oficina.
outbox-visit = { $site } · { $when }
outbox-line = { $what } · desde { $since } · { $state }
outbox-events = Anotaciones del registro: { $count }
outbox-photos = Fotografías: { $count } ({ $size })
outbox-photo-arrived = fotografía, { $arrived } de { $size }
outbox-seal = Sello del registro
outbox-sending = Se envía: { $what }
outbox-is-sent = se envía
outbox-waits = espera cobertura
outbox-waits-wifi = espera wifi
outbox-waits-answer = espera la respuesta de la oficina
outbox-waits-turn = le toca enseguida
outbox-waits-stuck = espera las anotaciones del registro
outbox-waits-office = espera a que este dispositivo se una
outbox-aside = apartado en la oficina para revisarlo
    .do = Otro dispositivo sigue con esta visita. La oficina tiene lo suyo en su disco y lo mira. Aquí también se guarda.
outbox-stuck-why = detenido: { $why }
outbox-again-in = Nuevo intento en { $left }.
outbox-no-network = Sin red. Sale solo cuando hay cobertura.
outbox-wishes = Por qué red
outbox-send-events = Anotaciones del registro solo por wifi
outbox-send-previews = Imágenes pequeñas solo por wifi
outbox-send-originals = Fotografías solo por wifi
outbox-send-now = Enviar ahora
outbox-revoked = no admitido: mirar aquí
outbox-revoked-notice = La oficina ya no admite este dispositivo
    .do = Todo se guarda en este dispositivo. No se envía nada. Pida un código a la oficina y únase de nuevo.
outbox-nowhere = Este dispositivo no se ha unido a una oficina
    .do = Todo se guarda en este dispositivo. Pida un código a la oficina y únase.

## Por qué no sale nada, y por qué algo está detenido

hindered-no-answer = La oficina no responde.
    .do = Busque mejor cobertura; también puede ser la oficina la que falta. Sigue solo.
hindered-not-the-office = Responde otra cosa en lugar de la oficina.
    .do = Una red de invitados suele mostrar antes su propia página: abra un navegador y entre allí, o apague la wifi.
hindered-busy = La oficina no puede recibirlo ahora.
    .do = Sigue solo. Si dura un día, llame a la oficina.
hindered-no-token = La oficina no conoce este dispositivo.
    .do = Pida un código a la oficina y únase de nuevo. Todo se guarda aquí.
stuck-conflict = la oficina tiene otras anotaciones de esta visita
    .do = Llame a la oficina: allí una persona debe mirar la visita. Se guardan las dos. Después envíe de nuevo.
stuck-another-device = la oficina tiene esta visita de otro dispositivo
    .do = Llame a la oficina y pregunte qué dispositivo sigue con la visita.
stuck-taken-over = otro dispositivo sigue con esta visita
    .do = Siga en el otro dispositivo. Lo de aquí se guarda. Si no es así, llame a la oficina.
stuck-too-large = es más grande de lo que la oficina recibe
    .do = Llame a la oficina. Se guarda aquí; si es una fotografía, tome también una más pequeña.
stuck-other-length = a la oficina se le dijo otro tamaño de esta fotografía
    .do = Envíe de nuevo. Si sigue así, llame a la oficina.
stuck-other-key = la oficina conoce otra clave de este dispositivo
    .do = Pida un código a la oficina y únase de nuevo. Después envíe de nuevo.
stuck-sealed-otherwise = la visita está sellada en la oficina con otro contenido
    .do = Llame a la oficina: allí una persona debe mirar la visita. Lo suyo se guarda aquí.
stuck-no-addendum = tras el sello llegó algo que no es un añadido
    .do = Llame a la oficina: allí una persona debe mirar la visita. Todo se guarda aquí.
stuck-version = la oficina y este programa no se entienden
    .do = Actualice este programa, o pida a la oficina que actualice el suyo. Después envíe de nuevo.
stuck-not-read = la oficina no puede leerlo
    .do = Actualice este programa y envíe de nuevo. Si sigue así, llame a la oficina. Se guarda aquí.
stuck-file-gone = el archivo de la fotografía ya no está en este dispositivo
    .do = ¿Se movió? Devuélvalo y envíe de nuevo. Si no, añada al registro qué fotografía falta y por qué.
stuck-refused = la oficina lo rechaza
    .do = Envíe de nuevo. Si sigue así, llame a la oficina. Se guarda aquí.

## Unirse a una oficina

join-title = Unirse a una oficina
join-how = Pida un código a la oficina. Vale una vez, durante diez minutos. Pegue su enlace entero, o escriba código y dirección.
join-code-label = Enlace o código
join-office-label = Dirección de la oficina, si escribió el código
join-name-label = Nombre de este dispositivo en la oficina
join-name-usual = Dispositivo de campo
join-key = Este dispositivo dice a la oficina su clave pública. La clave que firma se queda aquí.
join-do = Unirse
join-under-way = Se pregunta a la oficina.
join-joined = Unido a: { $office }
join-done = Este dispositivo se ha unido a { $office }
    .do = Lo que espera sale ahora.
join-mistyped-code = Un código tiene ocho letras y cifras, como 7K2M-9QXR.
join-mistyped-address = Escriba la dirección entera, como https://office.example.
join-not-code = La oficina no acepta este código
    .do = Ya se usó, tiene más de diez minutos o lleva un error. Pida uno nuevo.
join-not-too-many = Demasiados códigos erróneos
    .do = Espere un minuto y escríbalo de nuevo.
join-not-no-answer = La oficina no responde
    .do = Mire la dirección y la cobertura. Después pulse Unirse otra vez.
join-not-not-an-office = No hay ninguna oficina en esta dirección
    .do = Mire la dirección. Una red de invitados puede pedir antes que entre en ella.
join-not-busy = La oficina no puede recibirlo ahora
    .do = Pulse Unirse otra vez dentro de un minuto.

## Lo que dice la oficina

clock-behind = El reloj de este dispositivo va { $minutes } min por detrás del de la oficina
clock-ahead = El reloj de este dispositivo va { $minutes } min por delante del de la oficina
clock-do = Ponga el reloj en hora. Lo anotado conserva la hora con que se anotó; la oficina apunta la diferencia.
review-accepted = Revisada por la oficina, { $when }: { $words }
review-accepted-bare = Revisada por la oficina, { $when }
review-question = La oficina pregunta: { $words }
review-question-bare = La oficina tiene una pregunta sobre esta visita. Llame allí.
review-other = La oficina dice: { $words }
review-other-bare = La oficina miró esta visita, { $when }
procedures-of-office = la oficina
going-on-here = Continúe aquí: { $site }
    .do = La oficina le da esta visita de otro dispositivo. Mire primero qué está conectado, abierto o fuera de su ajuste.
going-on-open = Abrir la visita
