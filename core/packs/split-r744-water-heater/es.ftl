# El paquete 'split R744 water heater' en español. Las claves están en core/src/procedure/pack.rs.

pack = Bomba de calor partida con R744
    .name = Servicio anual de una bomba de calor partida con R744 (dióxido de carbono)

## Preguntas

condition-first-service = ¿Es el primer servicio de este equipo?
condition-first-service-yes = Sí, el primero
condition-first-service-no = No

condition-coil = ¿Cómo son las aletas del serpentín de aire?
condition-coil-plain = Metal sin recubrir
condition-coil-coated = Recubiertas (de color, o lo dice el fabricante)

condition-sea = ¿Está cerca el mar?
condition-sea-near = Cerca: la sal llega al equipo
condition-sea-far = Lejos

condition-frost = ¿Puede helar donde está el equipo?
condition-frost-yes = Sí
condition-frost-no = No

condition-exchanger = Desincrustar el enfriador de gas: ¿de qué es el lado del agua?
condition-exchanger-stainless = Acero inoxidable, y el fabricante permite ácido
condition-exchanger-copper = Cobre, y el fabricante permite ácido
condition-exchanger-no-acid = No se sabe, doble pared o ácido prohibido: solo enjuagar
condition-exchanger-not-due = Todavía no toca desincrustar: solo enjuagar

condition-descaler = ¿Qué ácido lleva el desincrustante?
condition-descaler-citric = Cítrico
condition-descaler-phosphoric = Fosfórico
condition-descaler-sulfamic = Sulfámico
condition-descaler-hydrochloric = Clorhídrico

condition-certificate = ¿Tiene el certificado para circuitos con R744?
condition-certificate-yes = Sí, y está vigente
condition-certificate-no = No: el circuito queda cerrado

condition-reheat = ¿Está el acumulador otra vez a su temperatura de desinfección?
condition-reheat-reached = Sí, alcanzada y leída
condition-reheat-pending = Todavía no; el dueño sabe que está pendiente

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
instrument-low-side-gauge = Manómetro del lado de baja, para R744
instrument-high-side-gauge = Manómetro del lado de alta, para R744

## Lecturas

reading-serial = Número de serie del equipo
    .hint = Copiarlo de la placa, letra por letra.
reading-controller-serial = Número de serie del controlador
    .hint = Detrás del controlador o en su menú de información.
reading-hours = Horas de marcha del compresor
    .hint = Del controlador, si las cuenta.
reading-air-on-found = Aire a la entrada del serpentín, al llegar
    .hint = A la sombra, a un palmo de las aletas.
reading-air-off-found = Aire a la salida del ventilador, al llegar
    .hint = En medio del chorro de aire, por fuera de la rejilla.
reading-water-in-found = Agua a la entrada del equipo, al llegar
    .hint = Pinza sobre tubo desnudo, tapada con aislante.
reading-water-out-found = Agua a la salida del equipo, al llegar
    .hint = Pinza sobre tubo desnudo, tapada con aislante.
reading-flow-found = Caudal de agua, al llegar
    .hint = Es pequeño: del controlador, o con un medidor para caudales pequeños.
reading-power-found = Potencia consumida, al llegar
    .hint = Compresor, ventilador y bomba juntos, estable, sin resistencia encendida.
reading-tank-found = Temperatura del acumulador, al llegar
    .hint = Del controlador o del termómetro del acumulador.
reading-suction-line-found = Tubo de aspiración, al llegar
    .hint = Pinza en tubo desnudo antes del compresor, aislada por encima.
reading-discharge-line-found = Tubo de descarga, al llegar
    .hint = Pinza a un palmo después del compresor. Más de 100 °C: no tocar el tubo.
reading-cooler-outlet-found = Salida del enfriador de gas, al llegar
    .hint = Pinza en tubo desnudo después del enfriador de gas, antes de la expansión.
reading-low-pressure-found = Presión del lado de baja, al llegar
    .hint = Sobre la atmósfera, en kPa: 1 bar son 100 kPa. Equipo sellado: dejar vacío.
reading-high-pressure-found = Presión en el enfriador de gas, al llegar
    .hint = Sobre la atmósfera, hasta 16 000 kPa. Equipo sellado: dejar vacío.
reading-loop-temperature = Temperatura del circuito antes de abrir
    .hint = El más caliente de los dos tubos. Por encima de 30 °C (86 °F): esperar.
reading-fitting-temperature = Temperatura en el filtro de agua
    .hint = En el cuerpo desnudo. Por encima de 30 °C (86 °F): esperar.
reading-supply-ph = pH del agua de la red
    .hint = El agua con la que se llena. Con ella se compara el enjuague.
reading-supply-conductivity = Conductividad del agua de la red
    .hint = Si se tiene el medidor. Con ella se compara el enjuague.
reading-supply-hardness = Dureza del agua de la red
    .hint = Como carbonato de calcio. Indica cuándo toca desincrustar otra vez.
reading-supply-alkalinity = Alcalinidad del agua de la red
    .hint = Como carbonato de calcio, si se tiene el kit. Con ella se puede dar el índice de incrustación.
reading-water-use = Agua caliente que se usa en un día
    .hint = Preguntar al propietario: unos 50 L (13 gal) por persona. Indica cuándo desincrustar otra vez.
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
    .hint = A la salida del circuito. Debe ser igual al de la red.
reading-rinse-conductivity = Conductividad del agua de enjuague
    .hint = A la salida del circuito. Debe ser igual a la de la red.
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
    .hint = Estable, sin resistencia encendida.
reading-tank-left = Temperatura del acumulador, al terminar
    .hint = El mismo termómetro que antes.
reading-suction-line-left = Tubo de aspiración, al terminar
    .hint = La misma pinza, el mismo lugar.
reading-discharge-line-left = Tubo de descarga, al terminar
    .hint = La misma pinza, el mismo lugar. Quema: no tocar el tubo.
reading-cooler-outlet-left = Salida del enfriador de gas, al terminar
    .hint = La misma pinza, el mismo lugar.
reading-low-pressure-left = Presión del lado de baja, al terminar
    .hint = El mismo manómetro. Equipo sellado: dejar vacío.
reading-high-pressure-left = Presión en el enfriador de gas, al terminar
    .hint = El mismo manómetro. Equipo sellado: dejar vacío.
reading-tap-hot = Agua caliente en el grifo
    .hint = El grifo más cercano, después de un minuto. Más caliente de lo que se aguanta: revisar la válvula mezcladora.

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
shot-strainer = Filtro de agua
    .show = La malla como salió y luego limpia. Muestra qué circula en el agua.
shot-loop-connected = Bomba de servicio conectada
    .show = Las dos válvulas cerradas, las dos mangueras, la bomba y el balde en una foto.
shot-rinse-proof = Prueba del enjuague
    .show = Los medidores en el agua de enjuague, con los valores legibles.
shot-wiring-after = Cableado después del trabajo
    .show = La misma vista que antes: seco, cada enchufe puesto, cada cable en su lugar.
shot-mounting = Patas, pernos y tubos
    .show = Patas, pernos, soportes antivibración y entradas de tubos y cables.
shot-salt = Fijaciones después del cuidado contra la sal
    .show = Pernos, soportes y uniones: el óxido encontrado y la protección puesta.
shot-frost-guard = Protección contra heladas
    .show = Grifos de vaciado o válvulas antihielo, aislante y cable calefactor.
shot-casing-after = El equipo después del trabajo
    .show = La misma vista que antes: cerrado, limpio, nada olvidado.
shot-display-left = Pantalla en marcha
    .show = El equipo en marcha, sin avería en pantalla.
shot-settings-after = Ajustes al terminar
    .show = La misma pantalla que antes. Cada valor como se encontró.

## Lo que se lleva

chemical-degreaser = Desengrasante para serpentines sin recubrir
chemical-neutral-cleaner = Limpiador de serpentines de pH neutro
chemical-descaler = Desincrustante para instalaciones de agua potable
chemical-neutraliser = Bicarbonato de sodio
part-mount = Soporte antivibración
part-cable-seal = Sello para entrada de cable
part-port-seal = Junta para toma de servicio
part-strainer-seal = Junta del filtro de agua
part-air-vent = Purgador de aire
gear-carbon-dioxide-meter = Medidor de dióxido de carbono
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
gear-r744-gauges = Manómetros y mangueras para R744

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
    .concentrate = Desincrustante para instalaciones de agua potable
    .water = Agua limpia, ya en el balde y en el circuito
    .order-1 = Primero el agua: medir la que hay en el balde y en el circuito.
    .order-2 = Luego el ácido, despacio, sobre el agua. Nunca agua sobre ácido.
    .order-3 = Remover con suavidad, la cara apartada, y esperar a que baje la espuma.
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
    .why = Para que el equipo funcione mientras se mide y un programa no lo arranque.
excursion-set-point = Consigna del agua caliente
    .why = Se baja para que el equipo no pida calor en cuanto vuelva la corriente.

## Llegar y asegurar

phase-arrive = Llegar y asegurar
    .owner = Revisamos el lugar y lo dejamos seguro para trabajar.
    .matters = Empezar seguro protege a las personas, la casa y la máquina.

step-approach = Ventilar; leer el medidor de dióxido de carbono
    .why = El dióxido de carbono escapado pesa más que el aire, no huele y quita el aliento en fosos, sótanos y salas pequeñas.
    .how = Abrir puerta y ventana antes de quedarse. Medidor abajo, por debajo de 5000 ppm. Silbido, escarcha en un tubo, dolor de cabeza o falta de aire: salir enseguida, ventilar, llamar a la persona certificada. El circuito está a más de 100 bar: no golpear ni doblar nada. Pisar firme; no trabajar solo en una escalera.

step-fit-to-run = Ver que está en condiciones de funcionar
    .why = Un equipo húmedo, dañado o con fugas no debe funcionar, ni para medirlo.
    .how = Entero, seco, con tapas y rejilla puestas. Las dos válvulas al acumulador abiertas y el acumulador lleno. Húmedo, dañado, con fugas o muerto: omitir este paso y decir por qué.

## Identificar

phase-identify = Identificar el equipo
    .owner = Comprobamos que era su máquina y anotamos sus números.
    .matters = Con los números correctos, su garantía y su historial quedan en orden.

step-right-unit = Probar que es el equipo correcto
    .why = El registro y la garantía valen solo para este número de serie.
    .how = Comparar el número de serie con el trabajo. Si es otro: parar y preguntar a la oficina.

step-know-unit = Responder qué tipo de equipo es
    .why = Las respuestas deciden qué pasos tocan. Un limpiador o un ácido equivocado puede arruinar el equipo.
    .how = Mirar la placa y el manual. Muchos fabricantes de enfriadores de gas prohíben el ácido: sin su sí por escrito, la respuesta es 'solo enjuagar'.

## Al llegar

phase-as-found = Estado al llegar
    .owner = Medimos cómo funcionaba la máquina antes de tocarla.
    .matters = Solo con números de antes y de después se ve qué logró el servicio.

step-settings-found = Anotar los ajustes y pasar el programa a manual
    .why = El programa y el modo deben volver tal como los tenía el dueño.
    .how = Fotografiar antes cada página. Anotar el valor que se encuentra y el que se pone.

step-run-found = Hacerlo funcionar hasta que esté estable
    .why = Las lecturas valen solo con la marcha estable.
    .how = Dejar que caliente agua un cuarto de hora. Sin desescarche y sin resistencia. Escuchar ventilador, bomba y compresor. Manos y ropa lejos del ventilador.
    .then = Si las temperaturas se mantienen cinco minutos, tomar las lecturas.

step-read-found = Tomar las lecturas al llegar
    .why = Al final se toman otra vez las mismas.
    .how = Todas en pocos minutos. Marcar dónde van las pinzas: vuelven al mismo lugar.

step-gauges-found = Manómetros R744 solo donde se pueda: al llegar
    .why = La carga está pesada al gramo. Cada apertura pierde algo, y una manguera a más de 100 bar mata cuando se suelta.
    .how = Solo si las pinzas dejan dudas y el fabricante puso tomas. Manómetros, mangueras y válvulas para R744, gafas, guantes. Nunca encerrar líquido entre dos válvulas cerradas. Lugar ventilado, medidor encendido. Equipo sellado: omitir este paso.

## Aislar y abrir

phase-isolate = Aislar y abrir
    .owner = Cortamos la corriente, la bloqueamos y comprobamos que no la había.
    .matters = Una máquina que no puede arrancar no hiere a nadie.

step-lower-set-point = Bajar la consigna y parar el equipo
    .why = Cuando vuelva la corriente, no debe calentar antes de tiempo.
    .how = Anotar antes el valor. Dejar que bomba y ventilador se detengan.

step-lock-off = Cortar cada alimentación, bloquear y etiquetar
    .why = Apagado no es aislado. Solo el candado propio impide que alguien conecte.
    .how = El equipo, la resistencia, la tarifa nocturna, el desviador solar: encontrarlos todos. Candado propio, etiqueta propia, la llave en el bolsillo. Donde las normas locales lo dicen, decide la persona habilitada.

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
    .why = El serpentín y el enfriador de gas se cuidan también por dentro.
    .how = Fotografiar antes el cableado. También parado los tubos tienen 50 bar y más, al sol hasta su válvula de seguridad: no apoyarse, no aflojar nada, la cara lejos de la salida de esa válvula. Cuidado con bordes cortantes y tubos calientes.

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

## Enfriador de gas

phase-exchanger = Limpiar el lado del agua
    .owner = Limpiamos la parte que da el calor a su agua, y la enjuagamos hasta que el enjuague fue igual al agua del grifo.
    .matters = La cal gasta energía y acorta la vida de la máquina. El enjuague mantiene limpia su agua potable.

step-gear-on = Protección puesta, lavaojos al alcance
    .why = Las salpicaduras no avisan, y los primeros segundos cuentan.
    .how = Gafas y pantalla facial, guantes químicos largos, delantal, calzado cerrado. Lavaojos abierto y al alcance, no en la furgoneta. Que pase aire fresco.

step-shut-valves = Cerrar las dos válvulas; ver que está frío
    .why = El agua del acumulador debe quedar limpia, y el agua caliente a presión escalda.
    .how = Las dos válvulas entre equipo y acumulador. Compresor y resistencias siguen bloqueados. Medir los dos tubos. Por encima de 30 °C (86 °F): esperar.

step-leak-test = Abrir las tomas, vaciar, ver que no sale más
    .why = Una válvula que pasa dejaría entrar ácido en el agua potable.
    .how = Una manguera en cada toma de servicio, las dos a un balde. Abrir despacio, la cara apartada. Dejar que el circuito se vacíe. Luego observar: la presión del acumulador sigue en las válvulas.
    .then = Ni una gota en dos minutos: las válvulas cierran. Si gotea: no usar ácido; la válvula es un hallazgo.

step-strainer = Abrir el filtro de agua y limpiarlo
    .why = El caudal es pequeño: poca suciedad basta para pararlo.
    .how = Aflojar despacio, la cara apartada; si silba o gotea: esperar. Fotografiar la malla, lavarla, buscar agujeros. Junta nueva, cerrar a mano y un poco más.

step-pump = Revisar la bomba
    .why = Una bomba que pierde o se traba deja hervir el enfriador de gas.
    .how = Seca por debajo, sin cal en el sello, enchufes firmes. Donde el fabricante da acceso: el eje gira libre.

step-connect-loop = Conectar la bomba de servicio
    .why = Con el equipo sin corriente, solo la bomba propia mueve el agua.
    .how = Balde, bomba, entrada por la toma de abajo, retorno de la de arriba al balde, abierto al aire. La bomba con interruptor diferencial. Llenar el balde con separación de aire o protección antirretorno, nunca con la manguera dentro.

step-water-first = Llenar con agua y hacer girar la bomba
    .why = Las fugas se ven con agua, y el ácido va siempre sobre agua.
    .how = Medir el agua que se echa: es parte de la mezcla. Intercambiador pequeño: unos 2 litros (medio galón). Bombear hasta que no salga aire, mirar cada unión, parar la bomba. Medir el agua de la red.

step-match-descaler = Comprobar el desincrustante con el enfriador de gas
    .why = El ácido equivocado llega al lado del refrigerante; el ácido con cloro o álcali da gas y calor.
    .how = El fabricante permite ácido, este, por escrito; doble pared: nunca. La etiqueta permite agua potable y este metal. Decir qué ácido es. Nunca clorhídrico en acero inoxidable; soldadura, zinc y aluminio también cuentan. Todo limpiador alcalino enjuagado, sin cloro cerca. En la duda: sin ácido, corregir la respuesta y solo enjuagar.

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

step-rinse-loop = Enjuagar el circuito con agua limpia
    .why = Nada del trabajo puede quedar en una parte de agua potable.
    .how = Agua limpia a través y al desecho, tres baldes por lo menos, en los dos sentidos. Separación de aire o protección antirretorno como antes. Luego parar la bomba.

step-prove-rinse = Comparar el enjuague con el agua de la red
    .why = La vista y el olfato no bastan. Igual pH o igual conductividad, sí.
    .how = Medir al final de la manguera de retorno. ¿Igual a la red dentro de lo que distingue el medidor? Si no: enjuagar y medir otra vez.

step-flush-loop = Abrir las válvulas y purgar al desagüe
    .why = La primera agua potable se lleva lo último del enjuague.
    .how = Las tomas de servicio siguen abiertas al desagüe. Abrir las válvulas una tras otra, despacio: puede salir caliente. Dos veces el contenido del circuito al desagüe. Ver que el acumulador está lleno.

step-close-ports = Cerrar y tapar las tomas, guardar los químicos
    .why = Una toma que llora moja la parte eléctrica; un ácido suelto hiere a alguien.
    .how = Tomas cerradas, mangueras fuera, tapones puestos, aire fuera, uniones secas. Ácido, álcali y cloro separados en la furgoneta, bien cerrados. Lavar los guantes y después quitarse la protección.

step-vent-air = Sacar el aire por los purgadores
    .why = El aire para el caudal pequeño, y el agua hierve en el enfriador de gas.
    .how = Cada purgador, el más alto al final, hasta que salga agua sin burbujas. Un paño encima: puede quemar. Un purgador que llora se cambia.

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
    .why = Un borne flojo quema; una tierra floja mata.
    .how = Cada enchufe como en la foto. Tierra continua desde la chapa hasta la alimentación. Bornes al par del fabricante. Un condensador eléctrico se descarga antes de medirlo.

step-first-extras = Primer servicio: pernos, soportes, sellos
    .why = Lo que se asienta en el primer año se ve ahora.
    .how = Patas y pernos, soportes, aislante de tubos, entradas de cable selladas, bornes al par completo, papeles completos. Anotar lo que debe corregir el instalador.

## Montar

phase-reassemble = Cerrar y conectar
    .owner = Cerramos la máquina y conectamos la corriente en el orden correcto.
    .matters = Las tapas y las rejillas dejan fuera a niños, agua y animales.

step-look-circuit = Mirar a lo largo de los tubos de refrigerante
    .why = Un tubo que roza revienta a más de 100 bar.
    .how = Mirar, no tirar: marcas de roce, aceite, escarcha, abrazaderas perdidas, salida de la válvula de seguridad libre. Si hay algo: hallazgo inseguro, la persona certificada antes de dar corriente.

step-frost-drain = Revisar la protección antihielo y su vaciado
    .why = En un corte de luz el agua quieta se hiela y revienta el enfriador de gas.
    .how = Los grifos de vaciado giran y están en el punto más bajo, o las válvulas antihielo están libres y cierran; aislante entero, cable calefactor con su alimentación anotada. Mostrar al dueño cómo vaciarlo.

step-guard-salt = Proteger pernos y uniones contra la sal
    .why = El óxido empieza donde la pintura está rayada y queda sal.
    .how = Primero secar. Retocar la pintura, cera o grasa en pernos y soportes. Nada en las aletas.

step-close-unit = Medidor limpio por dentro; cerrar rejilla y tapas
    .why = Una fuga se nota como dióxido de carbono abajo en la caja; el ventilador no debe quedar nunca descubierto.
    .how = Medidor abajo, por dentro. Girar el ventilador a mano: libre, ninguna herramienta dentro. Rejilla y tapas puestas, todos los tornillos. Limpiar la carcasa.

step-power-on = Quitar el candado y dar corriente
    .why = Desde ahora puede arrancar solo.
    .how = Nadie junto al equipo. Acumulador lleno, válvulas abiertas, sin fugas. Primero el equipo, luego las otras alimentaciones. Escuchar y oler: si hay algo raro, cortar otra vez.

step-set-point-home = Volver la consigna a su valor
    .why = El dueño quiere el agua como antes, y la desinfección la necesita.
    .how = Anotar lo que muestra ahora el controlador.

## Al terminar

phase-as-left = Estado al terminar
    .owner = Medimos otra vez, en los mismos lugares, para ver qué cambió el servicio.
    .matters = Usted ve en números lo que pagó.

step-run-left = Hacerlo funcionar hasta que esté estable
    .why = Las lecturas se comparan solo si la marcha está tan estable como antes.
    .how = Un cuarto de hora, sin desescarche y sin resistencia. Buscar fugas. Manos y ropa lejos del ventilador.
    .then = Si las temperaturas se mantienen cinco minutos, tomar las lecturas.

step-read-left = Tomar otra vez las mismas lecturas
    .why = El antes y el después muestran qué cambió el trabajo.
    .how = Los mismos lugares, los mismos instrumentos, todas en pocos minutos.

step-gauges-left = Manómetros R744 solo donde se pueda: al terminar
    .why = Las presiones dicen si el enfriador de gas cambió.
    .how = Los mismos manómetros, las mismas tomas. Aliviar las mangueras despacio, afuera, tapones puestos, y buscar fugas en cada toma.

step-schedule-home = Volver el programa y el modo a su valor
    .why = Un programa que queda en manual cuesta dinero y puede dejar el agua fría.
    .how = Comparar cada página con la foto de la llegada. Revisar también el reloj.

## Entregar

phase-hand-over = Entregar
    .owner = Revisamos el agua caliente en el grifo y le contamos qué sigue.
    .matters = El agua demasiado caliente quema; la demasiado tibia puede llevar gérmenes.

step-check-hot-water = Revisar el grifo y la temperatura de desinfección
    .why = Muy caliente escalda en segundos; tibia mucho tiempo cría legionela.
    .how = Medir en el grifo más cercano. Demasiado caliente: válvula mezcladora, avisar al dueño, no dejarlo así. Leer el acumulador: temperatura de desinfección alcanzada, o decirle al dueño cuándo lo estará. Valores guía: 60 °C (140 °F) en el acumulador, mezclada cerca del grifo (OMS 2007, de memoria). Mandan las normas locales.

step-tell-owner = Informar al dueño y dejar limpio el lugar
    .why = El dueño debe saber qué se hizo, qué se encontró y qué sigue.
    .how = Lo hecho, cada hallazgo, a quién llamar, la próxima fecha. Si falta la desinfección: hasta cuándo tener cuidado con el agua. Llevarse los residuos.
