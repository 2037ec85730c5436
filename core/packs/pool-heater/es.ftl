# El paquete 'pool heater' en español. Las claves están en core/src/procedure/pack.rs.

pack = Bomba de calor para piscina
    .name = Servicio anual de una bomba de calor para piscina

## Preguntas

condition-first-service = ¿Es el primer servicio de este equipo?
condition-first-service-yes = Sí, el primero
condition-first-service-no = No

condition-coil = ¿Cómo son las aletas del serpentín de aire?
condition-coil-plain = Metal sin recubrir
condition-coil-coated = Recubiertas (de color, o lo dice el fabricante)

condition-sea = ¿Llega sal al equipo?
condition-sea-near = Sí: el mar está cerca, o salpica una piscina de sal
condition-sea-far = No

condition-exchanger = Desincrustar el intercambiador: ¿de qué es?
condition-exchanger-titanium = Titanio, y el fabricante permite ácido
condition-exchanger-cupronickel = Cuproníquel, y el fabricante permite ácido
condition-exchanger-no-acid = No se sabe, o el ácido está prohibido: solo enjuagar
condition-exchanger-not-due = Todavía no toca desincrustar: solo enjuagar

condition-descaler = ¿Qué ácido lleva el desincrustante?
condition-descaler-citric = Cítrico
condition-descaler-phosphoric = Fosfórico
condition-descaler-sulfamic = Sulfámico
condition-descaler-hydrochloric = Clorhídrico

condition-season = ¿Qué viene después de este servicio?
condition-season-runs = La piscina se usa: funciona
condition-season-winter = Invierno: queda vacío y parado

condition-certificate = ¿Tiene el certificado para este circuito de refrigerante?
condition-certificate-yes = Sí, y está vigente
condition-certificate-no = No: el circuito queda cerrado

## Instrumentos

instrument-air-thermometer = Termómetro de aire
instrument-pipe-thermometer = Termómetro de pinza para tubo
instrument-flow-meter = Caudalímetro
instrument-power-meter = Medidor de potencia
instrument-ph-meter = Medidor de pH
instrument-conductivity-meter = Conductímetro
instrument-hardness-kit = Kit de dureza
instrument-alkalinity-kit = Kit de alcalinidad
instrument-insulation-tester = Medidor de aislamiento
instrument-capacitance-meter = Capacímetro
instrument-low-side-gauge = Manómetro del lado de baja
instrument-high-side-gauge = Manómetro del lado de alta
instrument-chlorine-kit = Kit de cloro

## Lecturas

reading-serial = Número de serie del equipo
    .hint = Copiarlo de la placa, letra por letra.
reading-controller-serial = Número de serie del controlador
    .hint = Detrás del controlador o en su menú de información.
reading-hours = Horas de marcha del compresor
    .hint = Del controlador, si las cuenta.
reading-pool-ph = pH de la piscina
    .hint = Casi siempre de 7,0 a 7,6. Un pH bajo come el intercambiador, se haga lo que se haga.
reading-pool-chlorine = Cloro libre en la piscina, mg/L
    .hint = De la piscina misma, no junto a la impulsión.
reading-pool-conductivity = Conductividad de la piscina
    .hint = Si se tiene el medidor. Indica una piscina de sal.
reading-air-on-found = Aire a la entrada del serpentín, al llegar
    .hint = A la sombra, a un palmo de las aletas.
reading-air-off-found = Aire a la salida del ventilador, al llegar
    .hint = En medio del chorro de aire, por fuera de la rejilla.
reading-water-in-found = Agua a la entrada del equipo, al llegar
    .hint = Pinza sobre tubo desnudo, tapada con aislante.
reading-water-out-found = Agua a la salida del equipo, al llegar
    .hint = Pinza sobre tubo desnudo, tapada con aislante.
reading-flow-found = Agua de piscina por el equipo, al llegar
    .hint = Medidor fijo o de abrazadera: del equipo, no del filtro entero. 6 m³/h son 100 L/min.
reading-power-found = Potencia consumida, al llegar
    .hint = Compresor y ventilador, estable, sin la bomba de la piscina.
reading-low-pressure-found = Presión del lado de baja, al llegar
    .hint = Sobre la atmósfera. Solo si está certificado y hay toma. Equipo sellado: dejar vacío.
reading-high-pressure-found = Presión del lado de alta, al llegar
    .hint = Sobre la atmósfera. Solo si está certificado y hay toma. Equipo sellado: dejar vacío.
reading-suction-line-found = Tubo de aspiración, al llegar
    .hint = Pinza en tubo desnudo antes del compresor, aislada por encima.
reading-discharge-line-found = Tubo de descarga, al llegar
    .hint = Pinza a un palmo después del compresor. Quema: no tocar el tubo.
reading-liquid-line-found = Tubo de líquido, al llegar
    .hint = Pinza en tubo desnudo después del intercambiador, antes de la expansión.
reading-loop-temperature = Temperatura del intercambiador antes de abrir
    .hint = El más caliente de los dos tubos. Por encima de 30 °C (86 °F): esperar.
reading-supply-ph = pH del agua de la red
    .hint = El agua con la que se llena. Con ella se compara el enjuague.
reading-supply-conductivity = Conductividad del agua de la red
    .hint = Si se tiene el medidor. Con ella se compara el enjuague.
reading-supply-hardness = Dureza del agua de la red
    .hint = Como carbonato de calcio. Indica cuándo toca desincrustar otra vez.
reading-supply-alkalinity = Alcalinidad del agua de la red
    .hint = Como carbonato de calcio, si se tiene el kit. Con ella se puede dar el índice de incrustación.
reading-flush-chlorine = Cloro libre en el agua del lavado, mg/L
    .hint = A la salida del intercambiador. Más que en el agua fresca: seguir lavando, sin ácido.
reading-cleaner-parts = Partes de agua por 1 parte de limpiador
    .hint = De la etiqueta del limpiador que se tiene en la mano.
reading-cleaner-percent = Limpiador en la mezcla lista, en porcentaje
    .hint = Solo si la etiqueta lo dice así: la parte del total.
reading-cleaner-dose = Limpiador por litro de agua
    .hint = Solo si la etiqueta lo dice así: mL por 1 L, o fl oz por 1 galón.
reading-cleaner-volume = Mezcla de limpiador en total
    .hint = Lo justo para mojar todas las aletas una vez.
reading-descaler-parts = Partes de agua por 1 parte de desincrustante
    .hint = De la etiqueta del desincrustante que se tiene en la mano.
reading-descaler-percent = Desincrustante en la mezcla lista, en porcentaje
    .hint = Solo si la etiqueta lo dice así: la parte del total.
reading-descaler-dose = Desincrustante por litro de agua
    .hint = Solo si la etiqueta lo dice así: mL por 1 L, o fl oz por 1 galón.
reading-descaler-volume = Mezcla de desincrustante en total
    .hint = Llena intercambiador, mangueras y balde por encima de la bomba.
reading-acid-ph-early = pH de la mezcla ácida a los cinco minutos
    .hint = Tira o medidor, con guantes.
reading-acid-ph-end = pH de la mezcla ácida al final
    .hint = Igual dos veces, con dos minutos entre ellas: estable.
reading-bucket-ph = pH del balde neutralizado
    .hint = Remover y esperar a que deje de subir. Las normas locales dicen qué puede ir al desagüe.
reading-neutraliser-parts = Partes de agua por 1 parte de neutralizante
    .hint = De la etiqueta. Bicarbonato en polvo: medidas por volumen.
reading-neutraliser-percent = Neutralizante en la mezcla lista, en porcentaje
    .hint = Solo si la etiqueta lo dice así: la parte del total.
reading-neutraliser-dose = Neutralizante por litro de agua
    .hint = Solo si la etiqueta lo dice así: un polvo, en gramos.
reading-neutraliser-volume = Mezcla de neutralizante en total
    .hint = Llena intercambiador, mangueras y balde por encima de la bomba.
reading-rinse-ph = pH del agua de enjuague
    .hint = A la salida del intercambiador. Debe ser igual al del agua fresca.
reading-rinse-conductivity = Conductividad del agua de enjuague
    .hint = A la salida del intercambiador. Debe ser igual a la del agua fresca.
reading-insulation = Resistencia de aislamiento a tierra
    .hint = El valor más bajo. Con refrigerante en el aceite es común que salga baja: hacer funcionar y repetir.
reading-winding-temperature = Temperatura del bobinado
    .hint = Pinza sobre la carcasa del compresor. Para comparar con otros años.
reading-capacitance = Capacidad del condensador eléctrico de marcha
    .hint = Descargado antes, un cable suelto. Comparar con su etiqueta.
reading-capacitance-label = Etiqueta del condensador de marcha
    .hint = El valor impreso en él, en µF.
reading-air-on-left = Aire a la entrada del serpentín, al terminar
    .hint = En el mismo lugar que antes.
reading-air-off-left = Aire a la salida del ventilador, al terminar
    .hint = En el mismo lugar que antes.
reading-water-in-left = Agua a la entrada del equipo, al terminar
    .hint = La misma pinza, el mismo lugar.
reading-water-out-left = Agua a la salida del equipo, al terminar
    .hint = La misma pinza, el mismo lugar.
reading-flow-left = Caudal de agua, al terminar
    .hint = El mismo medidor, el mismo lugar.
reading-power-left = Potencia consumida, al terminar
    .hint = Compresor y ventilador, estable, sin la bomba de la piscina.
reading-low-pressure-left = Presión del lado de baja, al terminar
    .hint = El mismo manómetro. Equipo sellado: dejar vacío.
reading-high-pressure-left = Presión del lado de alta, al terminar
    .hint = El mismo manómetro. Equipo sellado: dejar vacío.
reading-suction-line-left = Tubo de aspiración, al terminar
    .hint = La misma pinza, el mismo lugar.
reading-discharge-line-left = Tubo de descarga, al terminar
    .hint = La misma pinza, el mismo lugar. Quema: no tocar el tubo.
reading-liquid-line-left = Tubo de líquido, al terminar
    .hint = La misma pinza, el mismo lugar.

## Fotos

shot-casing-before = El equipo antes del trabajo
    .show = El equipo entero, su lugar y lo que hay alrededor. Muestra cómo se encontró.
shot-nameplate = Placa de características
    .show = Cada línea legible: modelo, refrigerante, presiones, corriente.
shot-serial-plate = Número de serie
    .show = Solo el número de serie, de cerca y nítido. Prueba qué equipo era.
shot-controller-plate = Número de serie del controlador
    .show = El número en el controlador o en su menú.
shot-settings-before = Ajustes al llegar
    .show = La pantalla con consigna, modo y programa. A estos valores se vuelve.
shot-dosing-off = Clorador y dosificación parados
    .show = Sus interruptores cortados y bloqueados, los bidones cerrados.
shot-tag = Bloqueo y etiqueta
    .show = El seccionador abierto, con el candado y la etiqueta propios.
shot-wiring-before = Cableado antes del trabajo
    .show = Bornes y enchufes antes de tocarlos. Muestra dónde va cada cable.
shot-coil-before = Serpentín de aire antes
    .show = El serpentín entero, de frente; recordar el lugar para la foto de después.
shot-coating = Recubrimiento de las aletas
    .show = Un palmo de aletas, de cerca. Muestra si el recubrimiento está entero.
shot-coil-after = Serpentín de aire después
    .show = La misma vista que antes, enjuagado. Entre aletas limpias se ve la luz.
shot-loop-connected = Bomba de servicio conectada
    .show = Las válvulas del bypass cerradas, las dos mangueras, la bomba y el balde en una foto.
shot-rinse-proof = Prueba del enjuague
    .show = Los medidores en el agua de enjuague, con los valores legibles.
shot-bypass = Válvulas del bypass
    .show = Las tres válvulas con sus palancas. Muestra cómo están ahora.
shot-drained = Vaciado para el invierno
    .show = El vaciado abierto, las uniones y las válvulas del bypass cerradas.
shot-wiring-after = Cableado después del trabajo
    .show = La misma vista que antes: seco, cada enchufe puesto, cada cable en su lugar.
shot-mounting = Patas, pernos y tubos
    .show = Patas, pernos, soportes antivibración y entradas de tubos y cables.
shot-salt = Fijaciones después del cuidado contra la sal
    .show = Pernos, soportes y uniones: el óxido encontrado y la protección puesta.
shot-casing-after = El equipo después del trabajo
    .show = La misma vista que antes: cerrado, limpio, nada olvidado.
shot-display-left = Pantalla en marcha
    .show = El equipo en marcha, sin avería en pantalla.
shot-settings-after = Ajustes al terminar
    .show = La misma pantalla que antes. Cada valor como se encontró.

## Lo que se lleva

chemical-degreaser = Desengrasante para serpentines sin recubrir
chemical-neutral-cleaner = Limpiador de serpentines de pH neutro
chemical-descaler = Desincrustante que permite el fabricante del intercambiador
chemical-neutraliser = Bicarbonato de sodio
part-mount = Soporte antivibración
part-cable-seal = Sello para entrada de cable
part-drain-seal = Junta del vaciado y las uniones
part-flow-switch = Interruptor de flujo
gear-detector = Detector de refrigerante
gear-lock-and-tag = Candado y etiqueta
gear-voltage-tester = Comprobador de tensión bipolar
gear-goggles = Gafas cerradas
gear-face-shield = Pantalla facial
gear-chemical-gloves = Guantes químicos largos
gear-apron = Delantal químico
gear-eyewash = Lavaojos
gear-spray-covers = Bolsas y cinta para la parte eléctrica
gear-brush = Cepillo suave
gear-sprayer = Pulverizador de baja presión
gear-bucket = Dos baldes
gear-service-pump = Bomba de servicio con mangueras, con interruptor diferencial
gear-spill-kit = Kit para derrames
gear-pipe-clamps = Termómetros de pinza para tubo
gear-gauges = Manómetros para este refrigerante
gear-chlorine-kit = Kit de cloro

## Mezclas

mix-degreaser = Limpiador para aletas sin recubrir
    .concentrate = Desengrasante para serpentines
    .water = Agua limpia
    .order-1 = Primero el agua en el pulverizador.
    .order-2 = Luego el limpiador, despacio.
    .order-3 = Cerrar y mover con suavidad. No mezclarlo nunca con otra cosa.
    .gear = Gafas cerradas, guantes químicos largos, delantal. Manda la etiqueta.
mix-neutral-cleaner = Limpiador neutro para aletas recubiertas
    .concentrate = Limpiador de serpentines de pH neutro
    .water = Agua limpia
    .order-1 = Primero el agua en el pulverizador.
    .order-2 = Luego el limpiador.
    .order-3 = Cerrar y mover con suavidad.
    .gear = Gafas cerradas y guantes. Manda la etiqueta.
mix-descaler = Desincrustante
    .concentrate = Desincrustante que permite el fabricante del intercambiador
    .water = Agua fresca, ya en el balde y en el intercambiador
    .order-1 = Primero agua fresca, nunca de piscina: medir la que hay en el balde y en el intercambiador.
    .order-2 = Luego el ácido, despacio, sobre el agua. Nunca agua sobre ácido.
    .order-3 = Remover con suavidad, la cara apartada. Si huele a cloro: dejarlo, salir, aire fresco.
    .gear = Gafas y pantalla facial, guantes químicos largos, delantal, lavaojos al alcance. Manda la etiqueta.
mix-neutraliser = Neutralizante
    .concentrate = Bicarbonato de sodio o el neutralizante del fabricante
    .water = Agua limpia
    .order-1 = Primero el agua en el balde enjuagado.
    .order-2 = Luego el polvo, cucharada a cucharada: con restos de ácido hace espuma.
    .order-3 = Remover hasta que se disuelva.
    .gear = Gafas cerradas y guantes. Manda la etiqueta. Nunca sosa cáustica.

## Ajustes

excursion-schedule = Programa horario y modo
    .why = Para que el equipo y la bomba funcionen mientras se mide y un programa no los arranque.
excursion-set-point = Consigna de la piscina
    .why = Se baja para que el equipo no pida calor en cuanto vuelva la corriente.
excursion-dosing = Clorador y dosificación
    .why = Parados durante el trabajo: con ácido dan cloro gas, y sin caudal llenan el tubo.

## Llegar y asegurar

phase-arrive = Llegar y asegurar
    .owner = Revisamos el lugar y lo dejamos seguro para trabajar.
    .matters = Empezar seguro protege a las personas, la casa y la máquina.

step-approach = Mirar, oler y leer primero el detector
    .why = El refrigerante escapado puede arder; un cuarto de máquinas puede tener cloro.
    .how = Ventilar el cuarto de máquinas antes de entrar. Olor a cloro: quedarse fuera, ventilar, llamar al encargado de la piscina. Si el refrigerante puede arder (R290, R32): primero el detector, abajo; teléfono, linterna y aspiradora quedan fuera hasta que marque limpio. Si hay alarma: retirarse, evitar chispas, ventilar, llamar a la persona certificada.

step-fit-to-run = Ver que está en condiciones de funcionar
    .why = Un equipo húmedo, dañado o con fugas no debe funcionar, y menos junto a una piscina.
    .how = Entero, seco, con tapas y rejilla puestas. Bypass de modo que pase agua por el equipo, bomba en condiciones, interruptor diferencial presente. Húmedo, dañado, con fugas o muerto: omitir este paso y decir por qué.

## Identificar

phase-identify = Identificar el equipo
    .owner = Comprobamos que era su máquina y anotamos sus números.
    .matters = Con los números correctos, su garantía y su historial quedan en orden.

step-right-unit = Probar que es el equipo correcto
    .why = El registro y la garantía valen solo para este número de serie.
    .how = Comparar el número de serie con el trabajo. Si es otro: parar y preguntar a la oficina.

step-know-unit = Responder qué tipo de equipo es
    .why = Las respuestas deciden qué pasos tocan. Un limpiador o un ácido equivocado puede arruinar el equipo.
    .how = Mirar la placa y el manual: metal del intercambiador, qué dice el fabricante del ácido. Si no se sabe: solo enjuagar.

## Al llegar

phase-as-found = Estado al llegar
    .owner = Medimos cómo funcionaba la máquina antes de tocarla.
    .matters = Solo con números de antes y de después se ve qué logró el servicio.

step-pool-water = Probar el agua de la piscina
    .why = A la mayoría de los intercambiadores de piscina los mata el agua: ácida, o dosificada justo antes.
    .how = Muestra a un brazo de profundidad. Mirar dónde se dosifica cloro y ácido: debe ser después del equipo, con antirretorno entre medio. Si es antes: un hallazgo.

step-settings-found = Anotar los ajustes y pasar el programa a manual
    .why = El programa y el modo deben volver tal como los tenía el dueño.
    .how = Fotografiar antes cada página. Anotar el valor que se encuentra y el que se pone.

step-settings-noted = Anotar los ajustes
    .why = En primavera vuelven a lo que tenía el dueño.
    .how = Fotografiar cada página.

step-run-found = Hacerlo funcionar hasta que esté estable
    .why = Las lecturas valen solo con la marcha estable.
    .how = Bomba del filtro en marcha, contralavado hecho, un cuarto de hora, sin desescarche. Escuchar ventilador y compresor. Manos y ropa lejos del ventilador.
    .then = Si las temperaturas se mantienen cinco minutos, tomar las lecturas.

step-read-found = Tomar las lecturas al llegar
    .why = Al final se toman otra vez las mismas.
    .how = Todas en pocos minutos. Marcar dónde van las pinzas: vuelven al mismo lugar.

step-gauges-found = Manómetros solo donde se pueda: al llegar
    .why = Las pinzas dicen casi todo. Cada vez que se conecta un manómetro, un equipo sellado pierde carga.
    .how = Solo si hay tomas, con manómetros para este refrigerante y si las pinzas dejan dudas. Mangueras cortas, gafas, guantes. Detector encendido con R290 y R32. Equipo sellado: omitir este paso.

## Aislar y abrir

phase-isolate = Aislar y abrir
    .owner = Cortamos la corriente, la bloqueamos y comprobamos que no la había.
    .matters = Una máquina que no puede arrancar no hiere a nadie.

step-lower-set-point = Bajar la consigna y parar el equipo
    .why = Cuando vuelva la corriente, no debe calentar antes de tiempo.
    .how = Anotar antes el valor. Dejar que se detenga el ventilador, la bomba unos minutos más.

step-dosing-off = Parar, bloquear y anotar clorador y dosificación
    .why = El cloro y el ácido dan un gas venenoso; un clorador sin caudal llena el tubo de gas que arde.
    .how = Anotar antes producción y horarios. Cortar en sus propios interruptores, candado propio, bidones de cloro y de ácido cerrados y separados. Ningún producto de piscina cerca del balde.

step-dosing-off-winter = Parar clorador y dosificación para el invierno
    .why = El cloro y el ácido dan un gas venenoso; un clorador sin caudal llena el tubo de gas que arde.
    .how = Cortar en sus propios interruptores, candado propio, bidones de cloro y de ácido cerrados y separados. Ningún producto de piscina cerca del balde. La celda la guarda el dueño, según su fabricante.

step-lock-off = Cortar cada alimentación, bloquear y etiquetar
    .why = Apagado no es aislado, y junto a una piscina se está en lo mojado.
    .how = El equipo, la bomba, el reloj, el clorador, las bombas dosificadoras, luces del mismo cuadro: encontrarlos todos. Candado propio, etiqueta propia, la llave en el bolsillo. Donde las normas locales lo dicen, decide la persona habilitada.

step-wait-charge = Esperar a que se vaya la carga
    .why = Los condensadores eléctricos y los variadores siguen cargados después del corte.
    .how = Manda el tiempo de la etiqueta del fabricante. Las tapas siguen puestas.
    .then = Las tapas siguen puestas: ahora, comprobar la ausencia de tensión.

step-test-dead = Probar el comprobador y la ausencia de tensión
    .why = Un seccionador puede fallar, y un comprobador también.
    .how = Comprobador en una fuente viva conocida: marca. Luego cada polo con cada polo y con tierra, a la salida de cada seccionador o tras su tapa de bornes. Luego cada otra alimentación. Trabajar como si hubiera tensión.

step-prove-tester = Probar otra vez el comprobador
    .why = Un comprobador que falla a mitad muestra 'sin tensión' en un cable vivo.
    .how = La misma fuente viva de antes. Debe marcar otra vez. Si no: la prueba no vale.

step-covers-off = Quitar las tapas y la rejilla del ventilador
    .why = El serpentín y el intercambiador se limpian también por dentro.
    .how = Fotografiar antes el cableado. Guardar aparte los tornillos. Cuidado con bordes cortantes y tubos calientes. No aflojar ninguna unión de refrigerante.

## Serpentín de aire

phase-air-coil = Limpiar el serpentín de aire
    .owner = Limpiamos las aletas que toman el calor del aire.
    .matters = Las aletas limpias toman más calor, y la máquina gasta menos.

step-cover-electrics = Cubrir la parte eléctrica contra el agua
    .why = El agua en bornes y placas causa averías y descargas, incluso días después.
    .how = Embolsar placa, bornes, motor y enchufes. Pegar las bolsas con la boca hacia abajo.

step-brush-coil = Protección puesta, serpentín frío, cepillar en seco
    .why = La suciedad mojada se vuelve barro entre las aletas; el agua en una parte caliente salpica y la deforma.
    .how = Gafas, guantes, mangas largas, mascarilla. Serpentín y compresor deben estar fríos a la mano. Fotografiar, cepillar suave a lo largo de las aletas. Aspirar el resto solo si el refrigerante no puede arder. Nunca cepillar cruzado.

step-mix-degreaser = Mezclar el limpiador para aletas sin recubrir
    .why = Demasiado fuerte come las aletas; demasiado débil deja la grasa.
    .how = Muchos desengrasantes son alcalinos: lejos del desincrustante y de todo ácido.

step-mix-neutral = Mirar el recubrimiento y mezclar el neutro
    .why = Álcali y ácido levantan el recubrimiento; después se pudren las aletas.
    .how = Fotografiar el recubrimiento. Ampollas o zonas peladas son un hallazgo. Solo un limpiador de pH neutro que permita el fabricante del recubrimiento.

step-soak-coil = Rociar el limpiador y dejar actuar
    .why = El limpiador necesita tiempo para soltar lo que dejó el cepillo.
    .how = Baja presión, de abajo hacia arriba para que no deje marcas. No debe secarse: con sol y viento, una mitad cada vez.
    .then = Enjuagar enseguida, antes de que se seque.

step-rinse-coil = Enjuagar el serpentín de arriba abajo
    .why = Las aletas dobladas tapan el aire; los restos de limpiador las comen, y el álcali no debe encontrarse luego con el ácido.
    .how = Baja presión, lanza perpendicular a las aletas, a 100 mm (4 in), moviéndola solo a lo largo. Contra el flujo de aire, de dentro hacia fuera, donde se pueda. Seguir hasta que no salga espuma; luego la bandeja, su desagüe, pulverizador y balde. Desechar el agua según las normas locales.

step-rinse-salt = Enjuagar la sal de carcasa, base y soportes
    .why = La sal come el metal todo el año, más donde no llega la lluvia.
    .how = Agua dulce, baja presión, la parte eléctrica aún cubierta. Detrás del serpentín, bajo la base, todos los soportes.

## Intercambiador

phase-exchanger = Limpiar el intercambiador
    .owner = Limpiamos la parte que da el calor a su piscina, y la enjuagamos hasta que el enjuague fue igual al agua fresca.
    .matters = La cal gasta energía y acorta la vida de la máquina.

step-gear-on = Protección puesta, lavaojos al alcance
    .why = Las salpicaduras no avisan, y los primeros segundos cuentan.
    .how = Gafas y pantalla facial, guantes químicos largos, delantal, calzado cerrado. Lavaojos abierto y al alcance, no en la furgoneta. Que pase aire fresco.

step-shut-valves = Poner el bypass: equipo cerrado
    .why = El agua de piscina no debe encontrarse con el ácido, ni el ácido con la piscina.
    .how = Las dos válvulas del equipo cerradas, la del medio abierta. Bomba y calor siguen bloqueados. Fotografiar las palancas. Medir los dos tubos. Por encima de 30 °C (86 °F): esperar.

step-leak-test = Abrir el vaciado, ver que no sale más
    .why = Una válvula que pasa lleva cloro al ácido, o ácido a la piscina.
    .how = Tapón de vaciado y unión de arriba abiertos despacio, la cara apartada, a un balde. Dejar que se vacíe. Luego observar: el agua de la piscina sigue en las válvulas.
    .then = Ni una gota en dos minutos: las válvulas cierran. Si gotea: no usar ácido; la válvula es un hallazgo.

step-connect-loop = Conectar la bomba de servicio
    .why = Con el equipo sin corriente, solo la bomba propia mueve el agua.
    .how = Balde, bomba, entrada por la toma de abajo, retorno de la de arriba al balde, abierto al aire. La bomba con interruptor diferencial. Llenar el balde con separación de aire o protección antirretorno, nunca con la manguera dentro.

step-flush-chlorine = Lavar con agua fresca hasta que no quede cloro
    .why = Lo que queda del agua de piscina da cloro gas con el ácido.
    .how = Agua fresca a través y al desecho, tres veces el contenido por lo menos. Probar el agua fresca y luego la que sale: no más cloro que en la fresca. Enjuagar también balde, bomba y mangueras. Luego llenar, midiendo el agua, sacar el aire y parar la bomba.

step-match-descaler = Comprobar el desincrustante con el intercambiador
    .why = El ácido equivocado come el metal; el ácido con cloro o álcali da un gas venenoso.
    .how = La etiqueta y el fabricante deben permitir este metal. Decir qué ácido es. Nunca el ácido de la piscina, nunca clorhídrico donde hay acero inoxidable en el camino: ejes, vainas, muelles. Todo limpiador alcalino enjuagado, sin cloro medido. En la duda: sin ácido, corregir la respuesta y solo enjuagar.

step-add-acid = Echar el ácido despacio sobre el agua
    .why = El agua echada sobre ácido hierve y salpica.
    .how = Poco a poco, en el balde, con la bomba parada. Remover, esperar a que baje la espuma, seguir. Mandan la etiqueta y el fabricante.

step-circulate-acid = Circular hasta que no haga espuma
    .why = Termina cuando no sale gas y el pH está estable, no cuando lo dice el reloj.
    .how = No alejarse, y escribir la hora final en el balde. Medir el pH a los cinco minutos y al final. Solo si la etiqueta lo permite: añadir un poco de ácido cuando se agote. Nunca pasar del tiempo máximo.
    .then = Sin espuma y dos veces el mismo pH: parar la bomba. Si en el tiempo máximo aún hace espuma: parar también y neutralizar.

step-neutralise-bucket = Vaciar al balde y neutralizar despacio
    .why = El ácido gastado aún quema, y hace mucha espuma si se neutraliza rápido.
    .how = Vaciar circuito y mangueras al balde. Bicarbonato (nunca sosa cáustica) cucharada a cucharada; remover y esperar la espuma. Seguir hasta que no haga espuma y el pH esté cerca de 7. Desechar según las normas locales, nunca al pluvial; enjuagar el balde.

step-neutralise-loop = Circular el neutralizante
    .why = Quita el ácido que queda en el intercambiador y las mangueras.
    .how = Mezclar, llenar, poner en marcha la bomba. El retorno sigue abierto: el gas debe salir.
    .then = Parar la bomba, vaciar circuito y mangueras, desechar según las normas locales, enjuagar el balde.

step-rinse-loop = Enjuagar el intercambiador con agua fresca
    .why = El ácido que queda da gas cuando vuelve el cloro de la piscina.
    .how = Agua fresca a través y al desecho, tres baldes por lo menos, en los dos sentidos. Separación de aire o protección antirretorno como antes. Luego parar la bomba.

step-prove-rinse = Comparar el enjuague con el agua fresca
    .why = La vista y el olfato no bastan. Igual pH o igual conductividad, sí.
    .how = Medir al final de la manguera de retorno. ¿Igual al agua fresca dentro de lo que distingue el medidor? Si no: enjuagar y medir otra vez.

step-flush-loop = Abrir el bypass; la primera agua al desecho
    .why = El agua de piscina se lleva lo último del enjuague.
    .how = El vaciado aún abierto. Abrir despacio la válvula del filtro: dos veces el contenido al desecho. Luego la válvula a la piscina. Ver que no queda aire.

step-close-ports = Cerrar vaciado y uniones, guardar los químicos
    .why = Una unión que llora moja la parte eléctrica; el ácido junto al cloro da gas.
    .how = Juntas nuevas, apretar a mano: la carcasa es de plástico. Uniones secas. Ácido, álcali y cloro separados, bien cerrados, nada olvidado en el cuarto. Lavar los guantes y después quitarse la protección.

step-winter-drain = Vaciar para el invierno
    .why = El agua que queda en la carcasa se hiela y la revienta.
    .how = Vaciado y uniones abiertos, soplar con baja presión, mangueras fuera. Las válvulas del bypass quedan cerradas, el vaciado abierto, su tapón atado al equipo. Guardar los químicos separados, lavar los guantes y después quitarse la protección.

## Parte eléctrica

phase-electrics = Revisar la parte eléctrica
    .owner = Revisamos los cables, buscamos humedad y probamos el cable de protección.
    .matters = Los cables secos y bien apretados son seguros.

step-look-damp = Descubrir la parte eléctrica y buscar humedad
    .why = La corriente sobre partes húmedas da averías, fuego y descargas.
    .how = Quitar las bolsas sin derramar. Mirar bajo las placas y en los enchufes. Si hay humedad: secar con paño y aire tibio, esperar, mirar otra vez. Solo seco vale.

step-unplug-electronics = Desenchufar la electrónica para el aislamiento
    .why = La tensión de prueba mata placas, variadores y sensores.
    .how = Solo donde el fabricante permite la prueba. Si no, omitir los dos pasos y decir por qué. Placa, variador, sensores: cada enchufe marcado.

step-insulation-test = Medir el aislamiento
    .why = Un bobinado o un cable débil se encuentra antes de que falle o dé una descarga.
    .how = La tensión del fabricante, todos los polos juntos contra tierra, nunca con el compresor en vacío. Descargar después de la prueba. Un valor bajo con refrigerante en el aceite es común: repetir después de funcionar caliente.

step-terminals = Enchufar todo; revisar tierra y bornes
    .why = Un borne flojo quema; una tierra floja mata, sobre todo en lo mojado.
    .how = Cada enchufe como en la foto. Tierra continua desde la chapa hasta la alimentación, conexión equipotencial de la piscina puesta, diferencial con su botón cuando vuelva la corriente. Bornes al par del fabricante. Un condensador eléctrico se descarga antes de medirlo.

step-flow-switch = Revisar el interruptor de flujo
    .why = Para el equipo cuando para la bomba. Pegado, deja helar o hervir el intercambiador.
    .how = Paleta entera y libre, flecha en el sentido del agua, sin puente en los cables, sin verdín en los contactos.

step-first-extras = Primer servicio: pernos, soportes, sellos
    .why = Lo que se asienta en el primer año se ve ahora.
    .how = Patas y pernos, soportes, aislante de tubos, entradas de cable selladas, bornes al par completo, papeles completos. Anotar lo que debe corregir el instalador.

## Montar

phase-reassemble = Cerrar
    .owner = Cerramos la máquina y la dejamos en el estado correcto.
    .matters = Las tapas y las rejillas dejan fuera a niños, agua y animales.

step-guard-salt = Proteger pernos y uniones contra la sal
    .why = El óxido empieza donde la pintura está rayada y queda sal.
    .how = Primero secar. Retocar la pintura, cera o grasa en pernos y soportes. Nada en las aletas.

step-close-unit = Detector limpio por dentro; cerrar rejilla y tapas
    .why = Una fuga se junta abajo en la caja; el ventilador no debe quedar nunca descubierto.
    .how = Detector abajo, por dentro. Girar el ventilador a mano: libre, ninguna herramienta dentro. Rejilla y tapas puestas, todos los tornillos. Limpiar la carcasa.

step-power-on = Quitar el candado; primero la bomba, luego corriente
    .why = Desde ahora puede arrancar solo, y sin agua se dispara.
    .how = Nadie junto al equipo. Bypass abierto, sin fugas. Primero la bomba, luego el equipo; clorador y dosificación siguen bloqueados. Escuchar y oler: si hay algo raro, cortar otra vez.

step-leave-off = Dejarlo cortado y bloqueado
    .why = Seco, con el vaciado abierto, no debe arrancar antes de la primavera.
    .how = Seccionador cortado con el candado del dueño, fuera el propio. Un cartel: vacío, no conectar. Una funda que deje pasar el aire.

step-set-point-home = Volver la consigna a su valor
    .why = El dueño quiere la piscina como estaba.
    .how = Anotar lo que muestra ahora el controlador.

## Al terminar

phase-as-left = Estado al terminar
    .owner = Medimos otra vez, en los mismos lugares, para ver qué cambió el servicio.
    .matters = Usted ve en números lo que pagó.

step-run-left = Hacerlo funcionar hasta que esté estable
    .why = Las lecturas se comparan solo si la marcha está tan estable como antes.
    .how = Un cuarto de hora, sin desescarche. Buscar fugas. Manos y ropa lejos del ventilador.
    .then = Si las temperaturas se mantienen cinco minutos, tomar las lecturas.

step-read-left = Tomar otra vez las mismas lecturas
    .why = El antes y el después muestran qué cambió el trabajo.
    .how = Los mismos lugares, los mismos instrumentos, todas en pocos minutos.

step-gauges-left = Manómetros solo donde se pueda: al terminar
    .why = Las presiones dicen si el circuito cambió.
    .how = Los mismos manómetros, las mismas tomas. Quitarlos rápido, tapones puestos, y después el detector en cada toma.

step-prove-flow-switch = Parar la bomba: el equipo debe parar también
    .why = Solo la prueba muestra que el interruptor funciona.
    .how = Bomba parada: el equipo para en segundos. Bomba otra vez en marcha, esperar a que arranque. Si no para: hallazgo inseguro, cortar y bloquear.

step-dosing-on = Con la bomba en marcha: volver la dosificación
    .why = Sin cloro la piscina se pone verde; sin caudal el clorador hace gas.
    .how = Producción y horarios como se anotaron. Ver que paran con la bomba.

step-schedule-home = Volver el programa y el modo a su valor
    .why = Un programa que queda en manual cuesta dinero y puede dejar el agua fría.
    .how = Comparar cada página con la foto de la llegada. Revisar también el reloj.

## Entregar

phase-hand-over = Entregar
    .owner = Le contamos qué encontramos y qué sigue.
    .matters = El agua correcta conserva el intercambiador más que cualquier limpieza.

step-tell-owner = Informar al dueño y dejar limpio el lugar
    .why = El dueño debe saber qué se hizo, qué se encontró y qué sigue.
    .how = Lo hecho, cada hallazgo, a quién llamar, la próxima fecha. pH y cloro al llegar, dónde se dosifican, y antes de la helada: vaciarlo. Llevarse los residuos.

step-tell-owner-winter = Informar al dueño: vacío, cerrado y cortado
    .why = Conectado en seco se arruina.
    .how = Lo hecho, cada hallazgo, la próxima fecha. En primavera: cerrar vaciado, abrir bypass, primero la bomba, luego la corriente, al final la dosificación; mejor llamar. Llevarse los residuos.
