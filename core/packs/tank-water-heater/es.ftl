# El paquete 'tank water heater' en español. Las claves están en core/src/procedure/pack.rs.

pack = Equipo compacto con acumulador
    .name = Servicio anual de un equipo compacto con acumulador

## Preguntas

condition-first-service = ¿Es el primer servicio de este equipo?
condition-first-service-yes = Sí, el primero
condition-first-service-no = No

condition-coil = ¿Cómo son las aletas del serpentín de aire?
condition-coil-plain = Metal sin recubrir
condition-coil-coated = Recubiertas (de color, o lo dice el fabricante)

condition-ducts = ¿Entra o sale el aire por conductos?
condition-ducts-yes = Sí, por conductos
condition-ducts-no = No, de la sala

condition-anode = ¿Qué ánodo protege el acumulador?
condition-anode-sacrificial = Una barra de sacrificio: se gasta
condition-anode-impressed = Corriente impresa: tiene alimentación o piloto

condition-element = ¿Hay que quitar cal de una resistencia desmontable?
condition-element-due = Sí: está en el agua y toca
condition-element-not-due = No: no toca, va seca en una vaina o no hay

condition-certificate = ¿Tiene el certificado para este circuito de refrigerante?
condition-certificate-yes = Sí, y está vigente
condition-certificate-no = No: el circuito queda cerrado

condition-reheat = ¿Está el acumulador otra vez a su temperatura de desinfección?
condition-reheat-reached = Sí, alcanzada y leída
condition-reheat-pending = Todavía no; el dueño sabe que está pendiente

## Instrumentos

instrument-air-thermometer = Termómetro de aire
instrument-pipe-thermometer = Termómetro de pinza para tubo
instrument-power-meter = Medidor de potencia
instrument-hardness-kit = Kit de dureza
instrument-insulation-tester = Medidor de aislamiento
instrument-capacitance-meter = Capacímetro
instrument-low-side-gauge = Manómetro del lado de baja
instrument-high-side-gauge = Manómetro del lado de alta
instrument-water-gauge = Manómetro de agua
instrument-caliper = Calibre
instrument-voltmeter = Voltímetro

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
reading-power-found = Potencia consumida, al llegar
    .hint = Compresor y ventilador juntos, estable, sin resistencia encendida.
reading-tank-found = Temperatura del acumulador, al llegar
    .hint = Del controlador o del termómetro del acumulador.
reading-low-pressure-found = Presión del lado de baja, al llegar
    .hint = Sobre la atmósfera. Solo si está certificado y hay toma. Equipo sellado: dejar vacío.
reading-high-pressure-found = Presión del lado de alta, al llegar
    .hint = Sobre la atmósfera. Solo si está certificado y hay toma. Equipo sellado: dejar vacío.
reading-suction-line-found = Tubo de aspiración, al llegar
    .hint = Pinza en tubo desnudo antes del compresor, aislada por encima.
reading-discharge-line-found = Tubo de descarga, al llegar
    .hint = Pinza a un palmo después del compresor. Quema: no tocar el tubo.
reading-liquid-line-found = Tubo de líquido, al llegar
    .hint = Pinza en tubo desnudo donde sale de la envolvente del acumulador, antes de la expansión.
reading-feed-pressure = Presión de la entrada de agua fría
    .hint = En reposo, todos los grifos cerrados.
reading-valve-setting = Tarado de la válvula de seguridad
    .hint = Grabado en ella. 1 bar son 100 kPa.
reading-vessel-precharge = Precarga del vaso de expansión
    .hint = En su válvula de aire, con la presión del agua quitada. Sin vaso: dejar vacío.
reading-supply-hardness = Dureza del agua de la red
    .hint = Como carbonato de calcio. Indica cuándo toca desincrustar otra vez.
reading-water-use = Agua caliente que se usa en un día
    .hint = Preguntar al propietario: unos 50 L (13 gal) por persona. Indica cuándo desincrustar otra vez.
reading-fitting-temperature = Temperatura en la conexión
    .hint = En la conexión desnuda o en el grifo abierto. Por encima de 30 °C (86 °F): esperar.
reading-anode-diameter = Diámetro que queda del ánodo, en mm
    .hint = En el lugar más delgado. Menos de dos tercios de uno nuevo, o el alambre a la vista: cambiarlo.
reading-anode-new-diameter = Diámetro de un ánodo nuevo, en mm
    .hint = Del fabricante, o del que se coloca.
reading-anode-voltage = Tensión del ánodo de corriente impresa
    .hint = En los bornes de su alimentación, si se llega con seguridad. Si no, dejar vacío.
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
reading-power-left = Potencia consumida, al terminar
    .hint = Estable, sin resistencia encendida.
reading-tank-left = Temperatura del acumulador, al terminar
    .hint = El mismo termómetro que antes.
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
shot-filter = Filtro de aire al llegar
    .show = El filtro a contraluz. Muestra cuánto aire dejaba pasar.
shot-trap = Sifón de condensados
    .show = Bandeja, manguera y sifón, limpios, con agua en el sifón.
shot-safety-group = Grupo de seguridad
    .show = La válvula con su tarado, su salida abierta y la válvula antirretorno.
shot-anode-state = Ánodo
    .show = La barra entera junto a una regla. Muestra lo que queda.
shot-anode-display = Indicador del ánodo de corriente impresa
    .show = Su piloto o su página, sin avería.
shot-element-state = Resistencia e interior del acumulador
    .show = La resistencia limpia, su asiento de junta y el fondo del acumulador.
shot-wiring-after = Cableado después del trabajo
    .show = La misma vista que antes: seco, cada enchufe puesto, cada cable en su lugar.
shot-mounting = Patas, pernos y tubos
    .show = Patas, pernos, soportes antivibración y entradas de tubos y cables.
shot-casing-after = El equipo después del trabajo
    .show = La misma vista que antes: cerrado, limpio, nada olvidado.
shot-display-left = Pantalla en marcha
    .show = El equipo en marcha, sin avería en pantalla.
shot-settings-after = Ajustes al terminar
    .show = La misma pantalla que antes. Cada valor como se encontró.

## Lo que se lleva

chemical-degreaser = Desengrasante para serpentines sin recubrir
chemical-neutral-cleaner = Limpiador de serpentines de pH neutro
part-anode = Ánodo de sacrificio
part-anode-seal = Junta del ánodo
part-element-seal = Junta de la brida de la resistencia
part-air-filter = Filtro de aire
part-cable-seal = Sello para entrada de cable
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
gear-drain-hose = Manguera de vaciado
gear-wet-vacuum = Aspirador de agua, rasquetas de madera y plástico

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

## Ajustes

excursion-schedule = Programa horario y modo
    .why = Para que el equipo funcione mientras se mide y un programa no lo arranque.
excursion-set-point = Consigna del agua caliente
    .why = Se baja para que el equipo no pida calor en cuanto vuelva la corriente.

## Llegar y asegurar

phase-arrive = Llegar y asegurar
    .owner = Revisamos el lugar y lo dejamos seguro para trabajar.
    .matters = Empezar seguro protege a las personas, la casa y la máquina.

step-approach = Ventilar la sala; mirar, oler y leer el detector
    .why = El refrigerante escapado se junta abajo en la sala. Puede arder o quitar el aire, y no siempre se huele.
    .how = Puerta y ventana abiertas antes de quedarse. Leer el refrigerante en la placa. Si puede arder (R290, R32): primero el detector, abajo; teléfono, linterna y aspiradora quedan fuera hasta que marque limpio. Si hay alarma: salir, evitar chispas, ventilar, llamar a la persona certificada.

step-fit-to-run = Ver que está en condiciones de funcionar
    .why = Un equipo húmedo, dañado o con fugas no debe funcionar, ni para medirlo.
    .how = Entero, seco, con tapas puestas, aire libre a los dos lados, filtro y conductos en su lugar. Entrada de agua abierta, acumulador lleno, desagüe de la válvula de seguridad abierto al aire. Húmedo, dañado, con fugas o muerto: omitir este paso y decir por qué.

## Identificar

phase-identify = Identificar el equipo
    .owner = Comprobamos que era su máquina y anotamos sus números.
    .matters = Con los números correctos, su garantía y su historial quedan en orden.

step-right-unit = Probar que es el equipo correcto
    .why = El registro y la garantía valen solo para este número de serie.
    .how = Comparar el número de serie con el trabajo. Si es otro: parar y preguntar a la oficina.

step-know-unit = Responder qué tipo de equipo es
    .why = Las respuestas deciden qué pasos tocan. El condensador rodea el acumulador: aquí el ácido no sirve de nada.
    .how = Mirar la placa y el manual: ánodo, resistencia, conductos. En la duda sobre el recubrimiento: recubiertas.

## Al llegar

phase-as-found = Estado al llegar
    .owner = Medimos cómo funcionaba la máquina antes de tocarla.
    .matters = Solo con números de antes y de después se ve qué logró el servicio.

step-settings-found = Anotar los ajustes y pasar el programa a manual
    .why = El programa y el modo deben volver tal como los tenía el dueño.
    .how = Fotografiar antes cada página. Anotar el valor que se encuentra y el que se pone.

step-run-found = Hacerlo funcionar hasta que esté estable
    .why = Las lecturas valen solo con la marcha estable.
    .how = Si no arranca, abrir agua caliente. Un cuarto de hora, sin desescarche y sin resistencia. Escuchar ventilador y compresor, ver si gotea condensado. Manos y ropa lejos del ventilador.
    .then = Si las temperaturas se mantienen cinco minutos, tomar las lecturas.

step-read-found = Tomar las lecturas al llegar
    .why = Al final se toman otra vez las mismas.
    .how = Todas en pocos minutos. Marcar dónde van las pinzas: vuelven al mismo lugar.

step-gauges-found = Manómetros solo donde se pueda: al llegar
    .why = Las pinzas dicen casi todo. Cada vez que se conecta un manómetro, un equipo sellado pierde carga.
    .how = Solo si hay tomas, con manómetros para este refrigerante y si las pinzas dejan dudas. Mangueras cortas, gafas, guantes. Detector encendido con R290 y R32. Equipo sellado: omitir este paso.

step-safety-valve = Accionar la válvula de seguridad y ver la expansión
    .why = El agua caliente se dilata. Si no tiene salida, el acumulador revienta; si falla el antirretorno, el agua tibia vuelve a la red.
    .how = Manos y cara lejos de la salida: puede quemar. Accionar una vez, soltar, ver que cierra. Ninguna válvula entre ella y el acumulador, salida abierta, antirretorno en la entrada. Si falta o está pegada: hallazgo inseguro, llamar a la persona habilitada, no calentar.

## Aislar y abrir

phase-isolate = Aislar y abrir
    .owner = Cortamos la corriente, la bloqueamos y comprobamos que no la había.
    .matters = Una máquina que no puede arrancar no hiere a nadie.

step-lower-set-point = Bajar la consigna y parar el equipo
    .why = Cuando vuelva la corriente, no debe calentar antes de tiempo.
    .how = Anotar antes el valor. Dejar que bomba y ventilador se detengan.

step-lock-off = Cortar cada alimentación, bloquear y etiquetar
    .why = Apagado no es aislado. Solo el candado propio impide que alguien conecte.
    .how = El equipo, la resistencia, la tarifa nocturna, la señal solar, la alimentación del ánodo: encontrarlas todas. Candado propio, etiqueta propia, la llave en el bolsillo. Donde las normas locales lo dicen, decide la persona habilitada.

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

step-covers-off = Quitar la tapa superior y descubrir el ventilador
    .why = Serpentín, bandeja y filtro se limpian desde arriba.
    .how = Fotografiar antes el cableado. Guardar aparte los tornillos. Pisar firme. Cuidado con bordes cortantes y tubos calientes. No aflojar ninguna unión de refrigerante.

## Lado del aire

phase-air-side = Limpiar filtro, serpentín y desagüe
    .owner = Limpiamos el filtro y las aletas que toman el calor del aire, y el desagüe de su agua.
    .matters = El aire libre ahorra energía, y un desagüe libre mantiene seco el suelo.

step-open-air-path = Sacar el filtro; soltar las bocas de los conductos
    .why = Un filtro tapado hiela el serpentín y fuerza el compresor.
    .how = Fotografiarlo a contraluz. Lavarlo con agua fresca y jabón suave y dejar secar, o poner después uno nuevo. Marcar los conductos.

step-cover-electrics = Cubrir la parte eléctrica debajo del serpentín
    .why = Aquí el agua cae justo sobre bornes y placas: averías y descargas, incluso días después.
    .how = Embolsar placa, bornes, motor y enchufes, pegar con la boca hacia abajo. Una lámina desde el pie del serpentín a la bandeja. Poca agua, muchas veces.

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
    .how = Pulverizador manual, sin lanza. Solo lo que la bandeja puede tomar: ver que desagua antes de seguir. No debe secarse. Ventilar la sala.
    .then = Enjuagar enseguida, antes de que se seque.

step-rinse-coil = Enjuagar el serpentín con poca agua, a la bandeja
    .why = Las aletas dobladas tapan el aire; los restos de limpiador las comen; el agua fuera de la bandeja llega a la parte eléctrica.
    .how = Pulverizador manual, boquilla perpendicular a las aletas, a 100 mm (4 in), moviéndola solo a lo largo. Recoger con esponja lo que no desagua. Seguir hasta que no salga espuma. Desechar el agua según las normas locales.

step-condensate = Limpiar bandeja, desagüe y sifón; llenar el sifón
    .why = Un desagüe tapado inunda la parte eléctrica; un sifón seco deja entrar mal olor.
    .how = Limpiar la bandeja, enjuagar la manguera, limpiar el sifón y llenarlo. Echar medio litro en la bandeja: debe salir todo, con caída todo el camino y el final abierto.

step-ducts = Revisar los conductos
    .why = El polvo, los nidos y los pliegues quitan el aire; los conductos mojados crían moho.
    .how = Libres, estancos, aislados donde sudan, mallas limpias. Ninguno de una campana de cocina, y ninguno que quite aire a una caldera de llama abierta.

step-close-air-path = Volver a poner filtro y conductos
    .why = Sin aire el compresor se dispara o el serpentín se hiela.
    .how = Filtro seco y del lado correcto, conductos ajustados, nada olvidado dentro.

## Lado del agua

phase-water-side = Cuidar el acumulador
    .owner = Revisamos lo que protege su acumulador del óxido y de la presión, y lo llenamos otra vez con agua fresca.
    .matters = Un acumulador con el ánodo gastado se pica en pocos años.

step-cool-tank = Enfriar las conexiones de arriba y medirlas
    .why = El agua más caliente está arriba, justo detrás del ánodo. Quema en segundos.
    .how = Con el calor bloqueado: abrir un grifo de agua caliente hasta que salga fría, o esperar. Avisar antes al dueño. Medir en la conexión.

step-shut-feed = Cerrar la entrada de agua fría
    .why = Mientras esté abierta, la presión vuelve enseguida.
    .how = Girar despacio. Si no cierra: dejar las conexiones cerradas y anotar la válvula como hallazgo.

step-relieve = Quitar la presión y vaciar unos litros
    .why = Con presión el ánodo sale disparado; el sedimento sale con los primeros litros.
    .how = Manguera en el vaciado, a un sumidero, un grifo abierto para que entre aire. Vaciar hasta que el agua quede por debajo de la conexión, unos diez litros (2.6 galones). Debe salir sin fuerza. Medir ahora la precarga del vaso.

step-anode = Sacar el ánodo, medirlo, cambiarlo
    .why = Se oxida en lugar del acumulador, hasta que no queda nada.
    .how = Aflojar despacio, la cara apartada; si silba o gotea: esperar. Fotografiarlo junto a una regla. Si queda menos de dos tercios del grueso o se ve el alambre: uno nuevo del mismo metal. Junta nueva, cable de tierra puesto, par del fabricante.

step-element-lime = Vaciar, sacar la resistencia, quitar la cal a mano
    .why = La cal aísla la resistencia hasta que se quema. El ácido ataca el esmalte y queda en el agua potable.
    .how = Vaciar del todo. Marcar y quitar los cables. Solo madera y plástico, nunca metal sobre el esmalte, nunca ácido. Sacar la cal; aspirador de agua solo si el refrigerante no puede arder. Enjuagar por el vaciado. Junta nueva, tornillos en cruz.

step-refill = Llenar, sacar el aire, purgar cada grifo caliente
    .why = Una resistencia sin agua se quema; lo que soltó el trabajo no debe beberse.
    .how = Abrir despacio la entrada, con el vaciado aún abierto hasta que salga clara; luego cerrarlo. Un grifo caliente abierto hasta que no salga aire, después purgar cada grifo caliente. Mirar cada conexión: seca.

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

step-thermostat = Revisar termostato, limitador y resistencia
    .why = Evitan que el agua hierva cuando algo falla.
    .how = Sondas hasta el fondo de sus vainas, clips firmes, limitador sin puentear, cables sin quemar. Un limitador disparado es un hallazgo: buscar la causa antes de rearmar.

step-first-extras = Primer servicio: apoyo, fijaciones, sellos
    .why = Lo que se asienta en el primer año se ve ahora.
    .how = A nivel, firme o sujeto a la pared, tubos sin tensión y aislados, entradas de cable selladas, bornes al par completo, sala del tamaño que pide la placa, papeles completos. Anotar lo que debe corregir el instalador.

## Montar

phase-reassemble = Cerrar y conectar
    .owner = Cerramos la máquina y conectamos la corriente en el orden correcto.
    .matters = Las tapas y las rejillas dejan fuera a niños, agua y animales.

step-close-unit = Detector limpio por dentro; cerrar el equipo
    .why = Una fuga se junta abajo en la caja; el ventilador no debe quedar nunca descubierto.
    .how = Detector abajo, por dentro. Girar el ventilador a mano: libre, ninguna herramienta dentro. Rejilla y tapa puestas, todos los tornillos. Limpiar la carcasa.

step-power-on = Quitar el candado y dar corriente
    .why = Desde ahora puede arrancar solo.
    .how = Acumulador lleno, entrada abierta, sin fugas, aire libre. Primero el equipo, luego las otras alimentaciones. Escuchar y oler: si hay algo raro, cortar otra vez.

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

step-gauges-left = Manómetros solo donde se pueda: al terminar
    .why = Las presiones dicen si el circuito cambió.
    .how = Los mismos manómetros, las mismas tomas. Quitarlos rápido, tapones puestos, y después el detector en cada toma.

step-impressed-anode = Ver que funciona el ánodo de corriente impresa
    .why = Sin corriente el acumulador se oxida, y nadie lo nota.
    .how = Piloto o página sin avería. No debe apagarse nunca con el equipo: decírselo al dueño.

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
