# El paquete 'monobloc R290' en español. Las claves están en core/src/procedure/pack.rs.

pack = Monobloc de calefacción con R290
    .name = Servicio anual de una bomba de calor monobloc pequeña con R290 (propano)

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

condition-filling = ¿Qué circula por el equipo, con presión en el manómetro?
condition-filling-water = Agua de calefacción
condition-filling-glycol = Una mezcla de glicol

condition-drinking-water = ¿Calienta también agua para los grifos?
condition-drinking-water-yes = Sí, tiene un acumulador
condition-drinking-water-no = No, solo calefacción

condition-certificate = ¿Tiene el certificado para circuitos con R290?
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
instrument-insulation-tester = Medidor de aislamiento
instrument-capacitance-meter = Capacímetro
instrument-low-side-gauge = Manómetro del lado de baja
instrument-high-side-gauge = Manómetro del lado de alta
instrument-water-gauge = Manómetro para calefacción
instrument-refractometer = Refractómetro

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
    .hint = Medidor fijo o de abrazadera. Con un balde no se mide un circuito cerrado.
reading-glycol-in-found = Mezcla de glicol a la entrada, al llegar
    .hint = Pinza sobre tubo desnudo, tapada con aislante.
reading-glycol-out-found = Mezcla de glicol a la salida, al llegar
    .hint = Pinza sobre tubo desnudo, tapada con aislante.
reading-glycol-flow-found = Caudal de la mezcla de glicol, al llegar
    .hint = Medidor fijo, o de abrazadera ajustado a este glicol.
reading-power-found = Potencia consumida, al llegar
    .hint = Compresor, ventilador y bomba juntos, estable, sin resistencia encendida.
reading-system-pressure-found = Presión de la calefacción, al llegar
    .hint = En el manómetro, con la bomba en marcha. 1 bar son 100 kPa.
reading-suction-line-found = Tubo de aspiración, al llegar
    .hint = Pinza en tubo desnudo antes del compresor, aislada por encima.
reading-discharge-line-found = Tubo de descarga, al llegar
    .hint = Pinza a un palmo después del compresor. Quema: no tocar el tubo.
reading-liquid-line-found = Tubo de líquido, al llegar
    .hint = Pinza en tubo desnudo después del intercambiador de agua, antes de la expansión.
reading-low-pressure-found = Presión del lado de baja, al llegar
    .hint = Sobre la atmósfera. Solo si está certificado y hay toma. Equipo sellado: dejar vacío.
reading-high-pressure-found = Presión del lado de alta, al llegar
    .hint = Sobre la atmósfera. Solo si está certificado y hay toma. Equipo sellado: dejar vacío.
reading-fitting-temperature = Temperatura en el filtro
    .hint = En el cuerpo desnudo. Por encima de 30 °C (86 °F): esperar.
reading-vessel-precharge = Precarga del vaso de expansión
    .hint = En su válvula de aire, con el lado del agua cerrado y sin presión. Si sale agua: la membrana está rota.
reading-heating-ph = pH del agua de calefacción
    .hint = Casi siempre de 8,2 a 10; con aluminio en la instalación, 9 como máximo.
reading-heating-conductivity = Conductividad del agua de calefacción
    .hint = Manda el dato del fabricante. Alta: muy tratada, o llenada con agua salina.
reading-heating-hardness = Dureza del agua de calefacción
    .hint = Como carbonato de calcio, si se tiene el kit.
reading-frost-point = Protección contra heladas hasta
    .hint = Refractómetro, la escala de este mismo glicol.
reading-glycol-share = Glicol en la mezcla
    .hint = Refractómetro, si tiene la escala. Menos de 25 %: oxida y hace lodo.
reading-glycol-ph = pH de la mezcla de glicol
    .hint = Menos de 7, marrón o de olor agrio: gastada, un hallazgo.
reading-glycol-percent = Glicol que debe llevar la mezcla, en porcentaje
    .hint = De la etiqueta, para el frío de este lugar.
reading-glycol-parts = Partes de agua por 1 parte de glicol
    .hint = Solo si la etiqueta lo dice así.
reading-top-up-volume = Mezcla en total
    .hint = Para reponer: según el manómetro, y un litro más.
reading-system-pressure-left = Presión de la calefacción, al terminar
    .hint = En frío, bomba parada: la precarga y 30 kPa (0,3 bar) por lo menos.
reading-cleaner-parts = Partes de agua por 1 parte de limpiador
    .hint = De la etiqueta del limpiador que se tiene en la mano.
reading-cleaner-percent = Limpiador en la mezcla lista, en porcentaje
    .hint = Solo si la etiqueta lo dice así: la parte del total.
reading-cleaner-dose = Limpiador por litro de agua
    .hint = Solo si la etiqueta lo dice así: mL por 1 L, o fl oz por 1 galón.
reading-cleaner-volume = Mezcla de limpiador en total
    .hint = Lo justo para mojar todas las aletas una vez.
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
reading-glycol-in-left = Mezcla de glicol a la entrada, al terminar
    .hint = La misma pinza, el mismo lugar.
reading-glycol-out-left = Mezcla de glicol a la salida, al terminar
    .hint = La misma pinza, el mismo lugar.
reading-glycol-flow-left = Caudal de la mezcla de glicol, al terminar
    .hint = El mismo medidor, el mismo lugar.
reading-power-left = Potencia consumida, al terminar
    .hint = Estable, sin resistencia encendida.
reading-suction-line-left = Tubo de aspiración, al terminar
    .hint = La misma pinza, el mismo lugar.
reading-discharge-line-left = Tubo de descarga, al terminar
    .hint = La misma pinza, el mismo lugar. Quema: no tocar el tubo.
reading-liquid-line-left = Tubo de líquido, al terminar
    .hint = La misma pinza, el mismo lugar.
reading-low-pressure-left = Presión del lado de baja, al terminar
    .hint = El mismo manómetro. Equipo sellado: dejar vacío.
reading-high-pressure-left = Presión del lado de alta, al terminar
    .hint = El mismo manómetro. Equipo sellado: dejar vacío.
reading-tap-hot = Agua caliente en el grifo
    .hint = El grifo más cercano, después de un minuto. Más caliente de lo que se aguanta: revisar la válvula mezcladora.

## Fotos

shot-zone = La zona alrededor del equipo
    .show = Suelo, paredes y huecos alrededor. Muestra que nada puede encender ni juntar gas.
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
shot-strainer = Filtro de malla o magnético
    .show = La malla o el imán como salió y luego limpio. Muestra cuánto lodo circula.
shot-sample = Muestra del agua de calefacción
    .show = Un vaso transparente sobre blanco, con los valores legibles.
shot-filling-point = Punto de llenado
    .show = Antirretorno, manguera quitada, tapón puesto.
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
chemical-glycol = Glicol para calefacción, el de la etiqueta del equipo
part-mount = Soporte antivibración
part-cable-seal = Sello para entrada de cable
part-strainer-seal = Junta del filtro
part-vessel-seal = Junta del vaso de expansión
gear-detector = Detector de refrigerante
gear-lock-and-tag = Candado y etiqueta
gear-voltage-tester = Comprobador de tensión bipolar
gear-goggles = Gafas cerradas
gear-chemical-gloves = Guantes químicos largos
gear-apron = Delantal químico
gear-spray-covers = Bolsas y cinta para la parte eléctrica
gear-brush = Cepillo suave
gear-sprayer = Pulverizador de baja presión
gear-bucket = Dos baldes
gear-pipe-clamps = Termómetros de pinza para tubo
gear-gauges = Manómetros para este refrigerante
gear-refractometer = Refractómetro
gear-filling-pump = Bomba de llenado y bidón
gear-backflow-preventer = Antirretorno con manguera

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
mix-glycol = Mezcla de glicol para reponer
    .concentrate = Glicol con inhibidor
    .water = Agua desmineralizada o blanda y limpia
    .order-1 = Primero el agua en el bidón.
    .order-2 = Luego el glicol, del mismo tipo que el del circuito.
    .order-3 = Remover bien y comprobar con el refractómetro.
    .gear = Gafas cerradas y guantes. Manda la etiqueta. Nunca al desagüe ni al suelo.

## Ajustes

excursion-schedule = Programa horario y modo
    .why = Para que el equipo funcione mientras se mide y un programa no lo arranque.
excursion-heating = Modo de calefacción y temperatura de impulsión
    .why = Se baja para que el equipo no pida calor en cuanto vuelva la corriente.

## Llegar y asegurar

phase-arrive = Llegar y asegurar
    .owner = Revisamos el lugar y lo dejamos seguro para trabajar.
    .matters = Empezar seguro protege a las personas, la casa y la máquina.

step-approach = Primero el detector: abajo, antes que nada
    .why = El propano arde, pesa más que el aire y corre a cada hueco.
    .how = Encender el detector lejos del equipo, acercarse con el viento a la espalda, leer abajo. Teléfono, linterna, aspiradora y cigarrillos quedan fuera de la zona: fotografiar desde el borde. Alarma u olor: retirarse, no tocar interruptores, alejar a la gente, ventilar, llamar a la persona certificada y, según las normas locales, a los bomberos.

step-zone = Revisar la zona alrededor del equipo
    .why = El gas escapado no debe llegar a un sótano ni a nada que lo encienda.
    .how = Según el plano del fabricante; un metro alrededor por lo menos. Sin sumidero, patio inglés, ventana de sótano, toma de aire, enchufe, lámpara ni parrilla. Si hay algo nuevo: hallazgo inseguro, decírselo al dueño, no hacerlo funcionar.

step-indoor-vents = Leer el detector en los purgadores de dentro
    .why = El intercambiador puede perder hacia el agua de calefacción. Entonces el gas sale dentro de la casa.
    .how = En cada purgador, el separador de aire, la válvula de seguridad y el depósito, también abajo. Alarma: abrir ventanas, no tocar interruptores, salir, llamar a la persona certificada.

## Identificar

phase-identify = Identificar el equipo
    .owner = Comprobamos que era su máquina y anotamos sus números.
    .matters = Con los números correctos, su garantía y su historial quedan en orden.

step-right-unit = Probar que es el equipo correcto
    .why = El registro y la garantía valen solo para este número de serie.
    .how = Comparar el número de serie con el trabajo. Si es otro: parar y preguntar a la oficina.

step-know-unit = Responder qué tipo de equipo es
    .why = Las respuestas deciden qué pasos tocan. El agua de calefacción trae lodo y no cal: aquí el ácido no sirve de nada.
    .how = Mirar la placa, el manual y la etiqueta del punto de llenado: agua o glicol, y cuál.

## Al llegar

phase-as-found = Estado al llegar
    .owner = Medimos cómo funcionaba la máquina antes de tocarla.
    .matters = Solo con números de antes y de después se ve qué logró el servicio.

step-fit-to-run = Ver que está en condiciones de funcionar
    .why = Un equipo húmedo, dañado o con fugas no debe funcionar, ni para medirlo.
    .how = Entero, seco, con tapas y rejilla puestas. Válvulas del circuito abiertas, presión en el manómetro. Húmedo, dañado, con fugas o muerto: omitir este paso y decir por qué.

step-settings-found = Anotar los ajustes y pasar el programa a manual
    .why = El programa y el modo deben volver tal como los tenía el dueño.
    .how = Fotografiar antes cada página. Anotar el valor que se encuentra y el que se pone.

step-run-found = Hacerlo funcionar hasta que esté estable
    .why = Las lecturas valen solo con la marcha estable.
    .how = Dejar que caliente un cuarto de hora, con radiadores abiertos. Sin desescarche y sin resistencia. Escuchar ventilador, bomba y compresor. Manos y ropa lejos del ventilador.
    .then = Si las temperaturas se mantienen cinco minutos, tomar las lecturas.

step-water-found = Leer el agua de calefacción al llegar
    .why = Con caudal y temperaturas se calcula el calor.
    .how = Todas en pocos minutos. Marcar dónde van las pinzas.

step-glycol-found = Leer la mezcla de glicol al llegar
    .why = Al final se toman otra vez las mismas. El calor no se calcula: el glicol lleva menos que el agua.
    .how = Todas en pocos minutos. Marcar dónde van las pinzas.

step-read-found = Tomar las lecturas al llegar
    .why = Al final se toman otra vez las mismas.
    .how = Todas en pocos minutos. Marcar dónde van las pinzas: vuelven al mismo lugar.

step-gauges-found = Manómetros solo donde se pueda: al llegar
    .why = Las pinzas dicen casi todo. Cada apertura deja salir propano a su lado.
    .how = Solo si hay tomas, con manómetros para R290 y si las pinzas dejan dudas. Detector encendido a los pies, mangueras cortas, gafas, guantes, ningún interruptor en la zona. Equipo sellado: omitir este paso.

## Aislar y abrir

phase-isolate = Aislar y abrir
    .owner = Cortamos la corriente, la bloqueamos y comprobamos que no la había.
    .matters = Una máquina que no puede arrancar no hiere a nadie.

step-lower-set-point = Bajar la calefacción y parar el equipo
    .why = Cuando vuelva la corriente, no debe calentar antes de tiempo.
    .how = Anotar antes los valores. Dejar que bomba y ventilador se detengan.

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

step-covers-off = Detector abajo; luego quitar tapas y rejilla
    .why = Una fuga pequeña se junta en la caja y espera una chispa.
    .how = Detector al pie de la carcasa mientras se abre. Fotografiar antes el cableado desde el borde de la zona. Sin herramientas eléctricas. Guardar aparte los tornillos. Cuidado con bordes cortantes y tubos calientes. No aflojar ninguna unión de refrigerante.

## Serpentín de aire

phase-air-coil = Limpiar el serpentín de aire
    .owner = Limpiamos las aletas que toman el calor del aire.
    .matters = Las aletas limpias toman más calor, y la máquina gasta menos.

step-cover-electrics = Cubrir la parte eléctrica contra el agua
    .why = El agua en bornes y placas causa averías y descargas, incluso días después.
    .how = Embolsar placa, bornes, motor y enchufes. Pegar las bolsas con la boca hacia abajo.

step-brush-coil = Protección puesta, serpentín frío, cepillar en seco
    .why = La suciedad mojada se vuelve barro entre las aletas; el agua en una parte caliente salpica y la deforma.
    .how = Gafas, guantes, mangas largas, mascarilla. Serpentín y compresor deben estar fríos a la mano. Cepillar suave a lo largo de las aletas, nunca cruzado. Sin aspiradora: hace chispas.

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

## Agua de calefacción

phase-hydronics = Cuidar el agua de calefacción
    .owner = Limpiamos el filtro de su calefacción y probamos el agua, su presión y su vaso de expansión.
    .matters = El lodo tapa la máquina, y sin presión entra aire.

step-shut-valves = Cerrar las válvulas del filtro; ver que está frío
    .why = El agua caliente a presión escalda, y toda la casa se vacía por un filtro abierto.
    .how = Los dos lados del filtro y la válvula del vaso. La calefacción sigue bloqueada. Medir en el filtro.

step-relieve = Quitar la presión entre las válvulas
    .why = Una tapa con presión sale volando, y el agua detrás puede estar tibia.
    .how = Manguera en el grifo de vaciado, a un balde. Debe salir sin fuerza y parar. Si no para: una válvula pasa, dejar cerrado y anotarlo como hallazgo.

step-strainer = Limpiar el filtro de malla o magnético
    .why = El lodo negro tapa el intercambiador. Se lava: sin ácido, aquí no hay cal.
    .how = Aflojar despacio, la cara apartada; si silba o gotea: esperar. Fotografiar malla e imán, lavarlos, buscar agujeros. Mucho lodo: un hallazgo, limpiar la instalación en otra visita. Junta nueva. El lodo va a un recipiente, no al desagüe.

step-vessel = Medir la precarga del vaso de expansión
    .why = Sin su colchón la presión sube y baja con el calor, hasta que gotea la válvula de seguridad y entra aire.
    .how = Válvula del vaso cerrada, su vaciado abierto, no sale agua: entonces el manómetro en la válvula de aire. Completar con nitrógeno o aire seco hasta la altura de la instalación y 30 kPa (0,3 bar). Agua en la válvula de aire: vaso nuevo, un hallazgo.

step-sample-water = Probar el agua de calefacción
    .why = El pH y las sales dicen si come el metal y hace lodo.
    .how = Del vaciado, después de un litro. Clara o negra, olor: anotarlo. Fuera de límites: un hallazgo; tratarla solo con lo que permite el fabricante.

step-sample-glycol = Probar la mezcla de glicol
    .why = Demasiado diluida se hiela y revienta el intercambiador; gastada se vuelve ácida y come el metal.
    .how = Una gota en el refractómetro, escala de este glicol, fría. Luego el pH. Si protege menos que el día más frío del lugar: un hallazgo, corregirlo antes de la helada.

step-guard-mains = Llenado con protección antirretorno
    .why = Si cae la presión de la red, el agua de calefacción entra en el agua potable.
    .how = Agua de calefacción tratada: desconector con zona de presión reducida (tipo BA, EN 1717 categoría 4); mandan las normas locales. Manguera puesta solo mientras se llena, sin alejarse.

step-mix-glycol = Preparar glicol para reponer
    .why = El agua sola diluye la mezcla; una manguera de la red lleva glicol al agua potable.
    .how = Bidón y bomba, nunca la red. El mismo glicol del circuito: los que no se llevan se cortan.

step-top-up = Abrir las válvulas y completar la presión
    .why = Muy baja deja entrar aire, muy alta abre la válvula de seguridad.
    .how = Abrir despacio la válvula del vaso y las dos del filtro. Llenar hasta la precarga y 30 kPa (0,3 bar) por lo menos. Mirar filtro y vaso: secos. Manguera fuera, tapón puesto.

step-bleed = Detector en los purgadores; luego sacar el aire
    .why = Lo que sale silbando de un purgador puede ser propano.
    .how = Primero el detector en el purgador. Abrir un poco, un paño encima, hasta que salga agua sin burbujas. Alarma: cerrar, abrir ventanas, no tocar interruptores, salir, llamar a la persona certificada. Si sale gas una y otra vez, es un hallazgo.

step-safety-valve = Accionar la válvula de seguridad
    .why = Una pegada deja reventar la instalación.
    .how = Manos y cara lejos de la salida. Accionar una vez, soltar, ver que cierra; completar otra vez la presión. Pegada o goteando: hallazgo inseguro.

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

step-insulation-test = Detector limpio; luego medir el aislamiento
    .why = Un bobinado o un cable débil se encuentra antes de que falle o dé una descarga. La prueba hace chispas.
    .how = Detector abajo en la caja: limpio. La tensión del fabricante, todos los polos juntos contra tierra, nunca con el compresor en vacío. Descargar después de la prueba. Un valor bajo con refrigerante en el aceite es común: repetir después de funcionar caliente.

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

step-guard-salt = Proteger pernos y uniones contra la sal
    .why = El óxido empieza donde la pintura está rayada y queda sal.
    .how = Primero secar. Retocar la pintura, cera o grasa en pernos y soportes. Nada en las aletas.

step-close-unit = Detector limpio por dentro; cerrar rejilla y tapas
    .why = Una fuga se junta abajo en la caja; el ventilador no debe quedar nunca descubierto.
    .how = Detector abajo, por dentro. Girar el ventilador a mano: libre, ninguna herramienta dentro. Rejilla y tapas puestas, todos los tornillos. Limpiar la carcasa.

step-power-on = Detector limpio, quitar el candado, dar corriente
    .why = Desde ahora puede arrancar solo, y un interruptor hace chispa.
    .how = Nadie en la zona. Circuito lleno, válvulas abiertas, sin fugas. Primero el equipo, luego las otras alimentaciones. Escuchar y oler: si hay algo raro, cortar otra vez desde fuera de la zona.

step-set-point-home = Volver la calefacción a su valor
    .why = El dueño quiere la casa como estaba.
    .how = Anotar lo que muestra ahora el controlador.

## Al terminar

phase-as-left = Estado al terminar
    .owner = Medimos otra vez, en los mismos lugares, para ver qué cambió el servicio.
    .matters = Usted ve en números lo que pagó.

step-run-left = Hacerlo funcionar hasta que esté estable
    .why = Las lecturas se comparan solo si la marcha está tan estable como antes.
    .how = Un cuarto de hora, sin desescarche y sin resistencia. Buscar fugas. Manos y ropa lejos del ventilador.
    .then = Si las temperaturas se mantienen cinco minutos, tomar las lecturas.

step-water-left = Leer el agua de calefacción al terminar
    .why = El antes y el después muestran qué cambió el trabajo.
    .how = Los mismos lugares, los mismos instrumentos, todas en pocos minutos.

step-glycol-left = Leer la mezcla de glicol al terminar
    .why = El antes y el después muestran qué cambió el trabajo.
    .how = Los mismos lugares, los mismos instrumentos, todas en pocos minutos.

step-read-left = Tomar otra vez las mismas lecturas
    .why = El antes y el después muestran qué cambió el trabajo.
    .how = Los mismos lugares, los mismos instrumentos, todas en pocos minutos.

step-gauges-left = Manómetros solo donde se pueda: al terminar
    .why = Las presiones dicen si el circuito cambió.
    .how = Los mismos manómetros, las mismas tomas, detector encendido. Quitarlos rápido, tapones puestos, y después el detector en cada toma.

step-indoor-again = Otra vez el detector en los purgadores de dentro
    .why = Con la bomba en marcha y presión se nota una fuga pequeña.
    .how = Los mismos lugares que al llegar. Alarma: abrir ventanas, no tocar interruptores, salir, llamar a la persona certificada; el equipo queda parado.

step-schedule-home = Volver el programa y el modo a su valor
    .why = Un programa que queda en manual cuesta dinero y puede dejar el agua fría.
    .how = Comparar cada página con la foto de la llegada. Revisar también el reloj.

## Entregar

phase-hand-over = Entregar
    .owner = Le contamos qué encontramos y qué sigue.
    .matters = Usted sabe a quién llamar y qué debe quedar fuera de la zona de la máquina.

step-check-hot-water = Revisar el grifo y la temperatura de desinfección
    .why = Muy caliente escalda en segundos; tibia mucho tiempo cría legionela.
    .how = Medir en el grifo más cercano. Demasiado caliente: válvula mezcladora, avisar al dueño, no dejarlo así. Leer el acumulador: temperatura de desinfección alcanzada, o decirle al dueño cuándo lo estará. Valores guía: 60 °C (140 °F) en el acumulador, mezclada cerca del grifo (OMS 2007, de memoria). Mandan las normas locales.

step-tell-owner = Informar al dueño y dejar limpio el lugar
    .why = El dueño debe saber qué se hizo, qué se encontró y qué sigue.
    .how = Lo hecho, cada hallazgo, a quién llamar, la próxima fecha. Qué no debe estar nunca en la zona y qué hacer si huele a gas. Llevarse los residuos.
